import type { ReactNode } from 'react';
import { AgeText, DateText, Quantity } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { BakeMark } from './BakeMark.tsx';
import { type BenchStep, type BlockedStep, byUnit, placeWords } from './bench-board.ts';
import styles from './step-queue.module.css';

function StepRow({ step }: { step: BenchStep & { blocked?: BlockedStep['blocked'] } }) {
  return (
    <li className={styles.step}>
      <div>
        <Link href={`/travelers/${step.travelerId}?step=${step.stepId}`}>{step.title}</Link>{' '}
        <span className="soft small">
          {placeWords(step.partClass, step.position)}, step {step.sequence} of {step.steps}
        </span>
        {step.blocked ? <p className="small">{step.blocked.detail}</p> : null}
        {step.bake ? (
          <p>
            <BakeMark clock={step.bake} />
          </p>
        ) : null}
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
