import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { BinFields } from './BinFields.tsx';

/** A new bin on the shelf. */
export function AddBinDialog({ onClose, onAdded }: { onClose: () => void; onAdded: (code: string) => void }) {
  const add = useCommand(partOperations.addBin);
  const [draft, setDraft] = useState({ code: '', title: '', walk: '' });
  const send = () =>
    add.mutate(
      { input: { ...draft, walk: draft.walk === '' ? Number.NaN : Number(draft.walk) } },
      {
        onSuccess: ({ code }) => {
          say(`Bin ${code} is added: put its code on the shelf.`);
          onAdded(code);
        },
      },
    );
  return (
    <Dialog title="Add a bin" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the bin"
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField
          name="code"
          label="Code"
          hint="Up to 20 letters, digits or dashes; it stays for good"
          value={draft.code}
          onChange={(code) => setDraft({ ...draft, code })}
          size={12}
          isCode
          isRequired
        />
        <BinFields draft={draft} onChange={setDraft} />
      </CommandForm>
    </Dialog>
  );
}
