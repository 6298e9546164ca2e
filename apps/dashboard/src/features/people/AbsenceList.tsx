import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { EnterAbsenceForm } from './enter-absence.tsx';
import { ReasonForm } from './ReasonForm.tsx';
import { type Absence, absencesQuery, absenceWords } from './working-time.ts';

function CancelForm({ absence, onDone }: { absence: Absence; onDone: () => void }) {
  const cancel = useCommand(workingTimeOperations.cancelAbsence);
  return (
    <ReasonForm
      problem={cancel.error}
      isPending={cancel.isPending}
      submit="Cancel the absence"
      onSubmit={(reason) =>
        cancel.mutate({ input: { absenceId: absence.id, reason }, version: absence.version }, { onSuccess: onDone })
      }
      onCancel={onDone}
    >
      <p>The person was or will be here after all.</p>
    </ReasonForm>
  );
}

/** When a person is or was away, and by which shifts they work. */
export function AbsenceList({ personId }: { personId: string }) {
  const { rows, shifts } = useSuspenseQuery(absencesQuery(personId)).data;
  const today = useToday();
  const [open, setOpen] = useState<'enter' | Absence>();
  const close = () => setOpen(undefined);
  return (
    <div className="stack">
      <p className="soft">
        {shifts.length === 0
          ? 'Works by the shop’s shifts.'
          : shifts.map(({ pattern, validFrom }) => `${pattern} from ${validFrom}`).join(', ')}
      </p>
      <Button onPress={() => setOpen('enter')}>Enter an absence</Button>
      {rows.length === 0 ? (
        <EmptyState title="Never away so far">Holidays, sickness and courses are entered here.</EmptyState>
      ) : (
        <ul className="lines">
          {rows.map((row) => (
            <li key={row.id}>
              <div>
                <DateText date={row.from} />
                {row.fromHalf === 'afternoon' ? ' from midday' : ''}
                {row.to === row.from ? '' : ' to '}
                {row.to === row.from ? null : <DateText date={row.to} />}
                {row.toHalf === 'morning' ? ' until midday' : ''} <span className="soft">{row.note}</span>
              </div>
              <StateMark state={row.to < today ? 'note' : 'hold'} word={absenceWords[row.kind]} />
              <Button weight="quiet" aria-label={`Cancel the absence from ${row.from}`} onPress={() => setOpen(row)}>
                Cancel
              </Button>
            </li>
          ))}
        </ul>
      )}
      <Dialog
        title={open === 'enter' ? 'Enter an absence' : 'Cancel an absence'}
        isOpen={open !== undefined}
        onClose={close}
      >
        {open === 'enter' ? <EnterAbsenceForm personId={personId} on={today} onDone={close} onCancel={close} /> : null}
        {open && open !== 'enter' ? <CancelForm absence={open} onDone={close} /> : null}
      </Dialog>
    </div>
  );
}
