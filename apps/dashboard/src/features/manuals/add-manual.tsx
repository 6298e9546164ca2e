import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

const kinds = [
  { value: 'overhaul', text: 'overhaul manual' },
  { value: 'blade', text: 'blade manual' },
  { value: 'standard-practice', text: 'standard practices' },
] as const;
type Kind = (typeof kinds)[number]['value'];

/** A manual the shop holds; its revisions are entered on it. */
export function AddManual({ onClose, onAdded }: { onClose: () => void; onAdded: (manualId: string) => void }) {
  const add = useCommand(manualOperations.addManual);
  const [draft, setDraft] = useState({ number: '', title: '', maker: '', kind: 'overhaul' as Kind });
  const put = (key: 'number' | 'title' | 'maker') => (text: string) => setDraft({ ...draft, [key]: text });
  const send = () =>
    add.mutate(
      { input: draft },
      {
        onSuccess: ({ id }) => {
          say(`${draft.number} is added; enter the revision you hold.`);
          onAdded(id);
        },
      },
    );
  return (
    <Dialog title="Add a manual" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the manual"
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField
          name="number"
          label="Number"
          hint="As printed on its cover"
          value={draft.number}
          onChange={put('number')}
          isCode
          isRequired
        />
        <TextField name="title" label="Title" value={draft.title} onChange={put('title')} isRequired />
        <TextField name="maker" label="Maker" value={draft.maker} onChange={put('maker')} isRequired />
        <Select
          name="kind"
          label="What it is"
          value={draft.kind}
          onChange={(kind) => setDraft({ ...draft, kind })}
          choices={kinds}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
