import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import { AddPatternForm } from './add-shift-pattern.tsx';
import { peopleQuery } from './list-people.ts';
import { ReasonForm } from './ReasonForm.tsx';
import { hoursOf } from './training.ts';
import { workingWeekQuery } from './working-time.ts';

const everyone = 'everyone';

function AssignForm({ onDone }: { onDone: () => void }) {
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

function TakeBackForm({ assignmentId, onDone }: { assignmentId: string; onDone: () => void }) {
  const takeBack = useCommand(workingTimeOperations.takeBackShifts);
  return (
    <ReasonForm
      problem={takeBack.error}
      isPending={takeBack.isPending}
      submit="Take it back"
      onSubmit={(reason) => takeBack.mutate({ input: { assignmentId, reason } }, { onSuccess: onDone })}
      onCancel={onDone}
    >
      <p>What was before it holds again.</p>
    </ReasonForm>
  );
}

/** Shift patterns, and whose they are from when. */
export function ShiftSheet() {
  const { patterns, assignments } = useSuspenseQuery(workingWeekQuery).data;
  const [open, setOpen] = useState<'pattern' | 'assign' | { id: string }>();
  const close = () => setOpen(undefined);
  return (
    <section className="sheet stack" aria-labelledby="shifts">
      <h2 id="shifts">Shifts</h2>
      <div className="row">
        <Button onPress={() => setOpen('pattern')}>Describe shifts</Button>
        <Button onPress={() => setOpen('assign')}>Give shifts to someone</Button>
      </div>
      {patterns.length === 0 ? (
        <EmptyState title="No shifts yet">Describe the shop’s week; then give it to everyone.</EmptyState>
      ) : null}
      <ul className="lines">
        {patterns.map((pattern) => (
          <li key={pattern.id}>
            <div>
              <strong>{pattern.name}</strong> <span className="soft">{hoursOf(pattern.minutesAWeek)} a week</span>
            </div>
          </li>
        ))}
      </ul>
      <h3>Whose, from when</h3>
      <ul className="lines">
        {assignments.map((one) => (
          <li key={one.id}>
            <div>
              {one.person ?? 'Everyone else'}: {one.pattern} from <DateText date={one.validFrom} />
            </div>
            <Button
              weight="quiet"
              aria-label={`Take back ${one.pattern} of ${one.person ?? 'everyone'}`}
              onPress={() => setOpen(one)}
            >
              Take back
            </Button>
          </li>
        ))}
      </ul>
      <Dialog title="Shifts" isOpen={open !== undefined} onClose={close}>
        {open === 'pattern' ? (
          <AddPatternForm
            onCancel={close}
            onDone={() => {
              say('The shifts are described.');
              close();
            }}
          />
        ) : null}
        {open === 'assign' ? <AssignForm onDone={close} /> : null}
        {typeof open === 'object' ? <TakeBackForm assignmentId={open.id} onDone={close} /> : null}
      </Dialog>
    </section>
  );
}
