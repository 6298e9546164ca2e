import {
  type ClockKind,
  clockKindTitles,
  clockOperations,
  onStep,
} from '@hubwright/contracts/work-orders/clock-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { AgeText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import { myClockQuery } from './clock.ts';

const kinds = onStep.map((value) => ({ value, text: clockKindTitles[value] }));

/** The clock on one step: started here or by the barcode on paper, and what it is: the job, doing it again, warranty. */
export function StepClock({ step }: { step: { id: string; title: string } }) {
  const running = useQuery(myClockQuery).data?.running;
  const start = useCommand(clockOperations.startClock);
  const [kind, setKind] = useState<ClockKind>('job');
  if (running?.step?.id === step.id)
    return (
      <p className="small soft">
        Your clock runs on this since <AgeText instant={running.startedAt} />.
      </p>
    );
  return (
    <div className="stack tight">
      <div className="row">
        <Select label="Time is" value={kind} onChange={setKind} choices={kinds} isRequired />
        <Button
          isPending={start.isPending}
          onPress={() =>
            start.mutate(
              { input: { kind, stepId: step.id } },
              { onSuccess: () => say(`Your clock runs on “${step.title}”.`) },
            )
          }
        >
          Start my clock
        </Button>
      </div>
      {start.error ? <Refusal problem={start.error} /> : null}
    </div>
  );
}
