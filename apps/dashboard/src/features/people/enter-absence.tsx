import { type AbsenceKind, workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { absenceChoices, firstHalfChoices, lastHalfChoices } from './working-time.ts';

type Half = 'morning' | 'afternoon';

/** Somebody is away from one half of a day through another. */
export function EnterAbsenceForm(props: { personId: string; on: string; onDone: () => void; onCancel: () => void }) {
  const enter = useCommand(workingTimeOperations.enterAbsence);
  const [kind, setKind] = useState<AbsenceKind | null>(null);
  const [span, setSpan] = useState({ from: props.on, to: props.on });
  const [fromHalf, setFromHalf] = useState<Half>('morning');
  const [toHalf, setToHalf] = useState<Half>('afternoon');
  const [note, setNote] = useState('');
  /** The last day never lies before the first. */
  const moveStart = (from: string) => setSpan(span.to < from ? { from, to: from } : { ...span, from });
  const submit = () => {
    // Left empty it is refused by the schema, at its own field.
    const input = { personId: props.personId, kind: kind as AbsenceKind, ...span, fromHalf, toHalf, note };
    const done = () => {
      say('The absence is entered.');
      props.onDone();
    };
    enter.mutate({ input }, { onSuccess: done });
  };
  return (
    <CommandForm
      problem={enter.error}
      isPending={enter.isPending}
      submit="Enter the absence"
      onSubmit={submit}
      onCancel={props.onCancel}
    >
      <Select
        name="kind"
        label="Why"
        placeholder="Choose why"
        value={kind}
        onChange={setKind}
        choices={absenceChoices}
        isRequired
      />
      <div className="field-grid">
        <DateField name="from" label="First day" value={span.from} onChange={moveStart} isRequired />
        <Select
          name="fromHalf"
          label="On the first day"
          value={fromHalf}
          onChange={setFromHalf}
          choices={firstHalfChoices}
        />
        <DateField name="to" label="Last day" value={span.to} onChange={(to) => setSpan({ ...span, to })} isRequired />
        <Select name="toHalf" label="On the last day" value={toHalf} onChange={setToHalf} choices={lastHalfChoices} />
      </div>
      <TextField
        name="note"
        label="Note"
        hint="Kept apart from the record and erased with the person; no diagnosis belongs here"
        value={note}
        onChange={setNote}
      />
    </CommandForm>
  );
}
