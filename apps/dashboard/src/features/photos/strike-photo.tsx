import { fileOperations } from '@hubwright/contracts/files/operations';
import type { Role } from '@hubwright/contracts/roles';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Photo } from './photos.ts';

/** Who looks. */
export interface Viewer {
  readonly id: string;
  readonly roles: readonly Role[];
}

export function mayStrike(photo: Photo, viewer: Viewer): boolean {
  return photo.struck === null && (photo.addedBy.id === viewer.id || viewer.roles.includes('inspector'));
}

/** A photo that should not count stays on record, struck, with the reason. */
export function StrikePhoto({ photo, onClose }: { photo: Photo; onClose: () => void }) {
  const strike = useCommand(fileOperations.strikePhoto);
  const [reason, setReason] = useState('');
  return (
    <Dialog title="Strike this photo" isOpen onClose={onClose}>
      <CommandForm
        problem={strike.error}
        isPending={strike.isPending}
        submit="Strike it"
        onCancel={onClose}
        onSubmit={() =>
          strike.mutate(
            { input: { photoId: photo.id, reason } },
            {
              onSuccess: () => {
                say('The photo is struck; it stays on record with the reason.');
                onClose();
              },
            },
          )
        }
      >
        <p>{photo.title}</p>
        <TextField name="reason" label="Why it should not count" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
