import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Select } from '../../ui/Select.tsx';
import { peopleQuery } from './list-people.ts';
import { workingWeekQuery } from './working-time.ts';

const everyone = 'everyone';

/** From a day on somebody, or everyone else, works by a pattern. */
export function AssignForm({ onDone }: { onDone: () => void }) {
  const { patterns } = useSuspenseQuery(workingWeekQuery).data;
  const { rows: people } = useSuspenseQuery(peopleQuery).data;
  const assign = useCommand(workingTimeOperations.assignShifts);
  const today = useToday();
  const [who, setWho] = useState<string | null>(null);
  const [patternId, setPattern] = useState<string | null>(null);
  const [validFrom, setFrom] = useState(today);
  const submit = () => {
    const person = who === null || who === everyone ? {} : { personId: who };
    assign.mutate({ input: { ...person, patternId: patternId as string, validFrom } }, { onSuccess: onDone });
  };
  const choices = [
    { value: everyone, text: 'Everyone without a pattern of their own' },
    ...people.filter(({ active }) => active).map(({ id, displayName }) => ({ value: id, text: displayName })),
  ];
  const open = patterns
    .filter(({ retiredOn }) => retiredOn === null)
    .map(({ id, name }) => ({ value: id, text: name }));
  return (
    <CommandForm
      problem={assign.error}
      isPending={assign.isPending}
      submit="Give the shifts"
      onSubmit={submit}
      onCancel={onDone}
    >
      <Select name="personId" label="Whose" value={who} onChange={setWho} choices={choices} isRequired />
      <Select name="patternId" label="Shifts" value={patternId} onChange={setPattern} choices={open} isRequired />
      <DateField name="validFrom" label="From" value={validFrom} onChange={setFrom} isRequired />
    </CommandForm>
  );
}
