import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import { AddPatternForm } from './add-shift-pattern.tsx';
import { AssignForm } from './assign-shifts.tsx';
import { ReasonForm } from './ReasonForm.tsx';
import { hoursOf } from './training.ts';
import { type WorkingWeek, workingWeekQuery } from './working-time.ts';

type Pattern = WorkingWeek['patterns'][number];

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

function RetireForm({ pattern, onDone }: { pattern: Pattern; onDone: () => void }) {
  const retire = useCommand(workingTimeOperations.retireShiftPattern);
  const { id: patternId, version } = pattern;
  return (
    <ReasonForm
      problem={retire.error}
      isPending={retire.isPending}
      submit="Give it to nobody any more"
      onSubmit={(reason) => retire.mutate({ input: { patternId, reason }, version }, { onSuccess: onDone })}
      onCancel={onDone}
    >
      <p>Whoever works by “{pattern.name}” keeps it until they are given other shifts.</p>
    </ReasonForm>
  );
}

/** Shift patterns, and whose they are from when. */
export function ShiftSheet() {
  const { patterns, assignments } = useSuspenseQuery(workingWeekQuery).data;
  const [open, setOpen] = useState<'pattern' | 'assign' | { id: string }>();
  const [retiring, setRetiring] = useState<Pattern>();
  const close = () => setOpen(undefined);
  const kept = () => setRetiring(undefined);
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
            {pattern.retiredOn ? (
              <StateMark state="note" word="given to nobody any more" />
            ) : (
              <Button weight="quiet" aria-label={`Retire ${pattern.name}`} onPress={() => setRetiring(pattern)}>
                Retire
              </Button>
            )}
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
      <Dialog title={`Retire ${retiring?.name ?? ''}`} isOpen={retiring !== undefined} onClose={kept}>
        {retiring ? <RetireForm pattern={retiring} onDone={kept} /> : null}
      </Dialog>
    </section>
  );
}
