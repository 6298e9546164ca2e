import type { ReactNode } from 'react';
import { durationWords } from '../../format/step-words.ts';
import { AgeText, DateText, InstantText, Quantity, useMinutesUntil } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type BenchStep, type BlockedStep, byUnit, placeWords } from './bench-board.ts';
import styles from './step-queue.module.css';

/** A bake's last beginning: said from the start, loud for its last half hour. Whether it did begin, the chart will say. */
function StartBy({ by }: { by: string }) {
  const left = useMinutesUntil(by);
  const state = left <= 30 ? 'hold' : 'waiting';
  const word = left < 0 ? 'the bake had to begin by' : `the bake begins within ${durationWords(left)}, by`;
  return (
    <p className="small">
      <StateMark state={state} word={word} /> <InstantText instant={by} />
    </p>
  );
}

function StepRow({ step }: { step: BenchStep & { blocked?: BlockedStep['blocked'] } }) {
  return (
    <li className={styles.step}>
      <div>
        <Link href={`/travelers/${step.travelerId}?step=${step.stepId}`}>{step.title}</Link>{' '}
        <span className="soft small">
          {placeWords(step.partClass, step.position)}, step {step.sequence} of {step.steps}
        </span>
        {step.blocked ? <p className="small">{step.blocked.detail}</p> : null}
        {step.startBy ? <StartBy by={step.startBy} /> : null}
      </div>
      <div className={styles.facts}>
        {step.blocked ? <StateMark state="hold" word="cannot start" /> : <StateMark state="open" word="ready" />}
        <span className="small soft">
          <Quantity amount={step.standardMinutes} unit="min" />, {step.blocked ? 'stands' : 'ready'} for{' '}
          <AgeText instant={step.readySince} />
        </span>
      </div>
    </li>
  );
}

/** Steps whose turn it is, unit by unit; the unit on top is the one to take first. */
export function StepQueue({ steps, empty }: { steps: readonly (BenchStep | BlockedStep)[]; empty: ReactNode }) {
  if (steps.length === 0) return empty;
  return (
    <ol className={styles.units}>
      {byUnit(steps).map(({ workOrderId, first, steps: ofUnit }) => (
        <li key={workOrderId} className={styles.unit}>
          <p className="row between">
            <span>
              <Link href={`/build/${workOrderId}`}>{first.workOrderNumber}</Link>{' '}
              <strong>{first.unit.designation}</strong> <span className="code">{first.unit.serial}</span>{' '}
              <span className="soft">{first.customer}</span>
            </span>
            {first.promisedOn ? (
              <span className="small">
                promised <DateText date={first.promisedOn} />
              </span>
            ) : null}
          </p>
          <ul className={styles.steps}>
            {ofUnit.map((step) => (
              <StepRow key={step.stepId} step={step} />
            ))}
          </ul>
        </li>
      ))}
    </ol>
  );
}
