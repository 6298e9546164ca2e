import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Media } from './peening.ts';

/** Out of its machine for good; another lot may go in. */
export function TakeOutMedia({ media, onClose }: { media: Media; onClose: () => void }) {
  const [reason, setReason] = useState('');
  const command = useCommand(mediaOperations.takeOutPeeningMedia);
  return (
    <Dialog title={`Take ${media.code} out of ${media.machine.code}`} isOpen onClose={onClose}>
      <CommandForm
        problem={command.error}
        isPending={command.isPending}
        submit="Take it out"
        onCancel={onClose}
        onSubmit={() =>
          command.mutate(
            { input: { mediaId: media.id, reason }, version: media.version },
            {
              onSuccess: () => {
                say(`${media.code} is out of ${media.machine.code}.`);
                onClose();
              },
            },
          )
        }
      >
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
