import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import { BinFields } from './BinFields.tsx';
import type { Place } from './places.ts';

/** A bin is called something else, or stands elsewhere on the way; its code stays. */
export function ChangeBinDialog({ bin, onClose }: { bin: Place; onClose: () => void }) {
  const change = useCommand(partOperations.changeBin);
  const [draft, setDraft] = useState({ title: bin.label, walk: String(bin.walk ?? '') });
  const send = () =>
    change.mutate(
      { input: { code: bin.ref, title: draft.title, walk: draft.walk === '' ? Number.NaN : Number(draft.walk) } },
      {
        onSuccess: () => {
          say(`Bin ${bin.ref} is changed.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Change bin ${bin.ref}`} isOpen onClose={onClose}>
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Change it"
        onSubmit={send}
        onCancel={onClose}
      >
        <p className="soft">The code {bin.ref} stays: it stands on the shelf, on labels and in the ledger.</p>
        <BinFields draft={draft} onChange={setDraft} />
      </CommandForm>
    </Dialog>
  );
}
