import { type InstrumentKind, instrumentKinds } from '@hubwright/contracts/manuals/words';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { CalibrationFields } from './CalibrationFields.tsx';

const kinds = instrumentKinds.map((value) => ({ value, text: value.replaceAll('-', ' ') }));
const empty = { tag: '', title: '', location: '', calibratedOn: '', calibrationDueOn: '' };

/** A gauge, wrench, protractor or tester that steps may be signed with. */
export function AddInstrument({ onClose, onAdded }: { onClose: () => void; onAdded: (id: string) => void }) {
  const add = useCommand(processOperations.addInstrument);
  const [draft, setDraft] = useState(empty);
  const [kind, setKind] = useState<InstrumentKind | null>(null);
  const put = (key: 'tag' | 'title' | 'location') => (text: string) => setDraft({ ...draft, [key]: text });
  const send = () =>
    add.mutate(
      { input: { ...draft, kind: kind as InstrumentKind } },
      {
        onSuccess: ({ id }) => {
          say(`${draft.tag.toUpperCase()} is on the list.`);
          onAdded(id);
        },
      },
    );
  return (
    <Dialog title="Add an instrument" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the instrument"
        onSubmit={send}
        onCancel={onClose}
      >
        <div className="field-grid">
          <TextField
            name="tag"
            label="Tag"
            hint="What is engraved on it or stuck to it"
            value={draft.tag}
            onChange={put('tag')}
            isCode
            isRequired
          />
          <Select
            name="kind"
            label="Kind"
            placeholder="Choose"
            value={kind}
            onChange={setKind}
            choices={kinds}
            isRequired
          />
          <TextField name="title" label="Instrument" value={draft.title} onChange={put('title')} isRequired />
          <TextField name="location" label="Where it is kept" value={draft.location} onChange={put('location')} />
        </div>
        <CalibrationFields draft={draft} onChange={setDraft} />
      </CommandForm>
    </Dialog>
  );
}
