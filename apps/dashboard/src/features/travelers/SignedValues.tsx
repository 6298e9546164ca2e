import styles from './measure-entries.module.css';
import type { Filled } from './process-form.ts';
import { SaidLines } from './sheets/SaidLines.tsx';
import type { SheetInHand } from './sheets/use-sheet.ts';
import { type Entries, type Step, standingOf, type Traveler } from './traveler.ts';

/** What a signature of this step covers, as it will be recorded. */
export function SignedValues({
  traveler,
  step,
  entries,
  filled,
  sheet,
}: {
  traveler: Traveler;
  step: Step;
  entries: Entries;
  filled: Filled;
  sheet: SheetInHand | undefined;
}) {
  return (
    <div className="stack tight">
      <p>
        <strong>{step.title}</strong>, step {step.sequence} of traveler <span className="code">{traveler.number}</span>
      </p>
      <p className="small">
        {traveler.title}, serial <span className="code">{traveler.serial}</span>, {traveler.workOrder.number}, by{' '}
        {traveler.revision.manual} revision {traveler.revision.revision}
      </p>
      {step.measures.length > 0 ? (
        <ul className={`small ${styles.signed}`}>
          {step.measures.map((measure) => (
            <li key={measure.id}>
              <span>{measure.name}</span>
              <span>
                <strong>{entries[measure.id]}</strong> {measure.unit}
                {standingOf(measure, { measures: step.measures, entries }) === 'outside' ? ', outside the limits' : ''}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
      {sheet ? <SaidLines said={sheet.said} /> : null}
      {step.form.length > 0 ? (
        <ul className={`small ${styles.signed}`}>
          {step.form.map(({ name, unit }) => (
            <li key={name}>
              <span>{name}</span>
              <span>
                <strong>{filled[name]}</strong> {unit}
              </span>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
