import { LimitGauge } from '../../ui/pictures/LimitGauge.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { limitText } from './MeasureEntries.tsx';
import styles from './measure-entries.module.css';
import { currentSignOff, type Step, type Traveler } from './traveler.ts';

function Measured({ step }: { step: Step }) {
  const signOff = currentSignOff(step);
  if (!signOff || signOff.values.length === 0) return null;
  return (
    <details open>
      <summary>
        <strong>{step.title}</strong>{' '}
        <span className="soft small">
          {signOff.person.displayName}
          {signOff.instrument ? `, with ${signOff.instrument.tag} ${signOff.instrument.title}` : ''}
        </span>
      </summary>
      <ul className={styles.measured}>
        {signOff.values.map((value) => {
          const measure = step.measures.find((each) => each.id === value.measureId);
          if (!measure) return null;
          return (
            <li key={value.measureId}>
              <span>
                {measure.name} <span className="soft small">{limitText(measure)}</span>
              </span>
              <strong className="quantity">
                {value.value}
                <span className="unit">{measure.unit}</span>
              </strong>
              <LimitGauge value={value.value} low={measure.low} high={measure.high} unit={measure.unit} />
              <StateMark state={value.pass ? 'passed' : 'stop'} word={value.pass ? 'inside' : 'outside'} />
            </li>
          );
        })}
      </ul>
    </details>
  );
}

/** What was measured and signed on this part before the inspection, each value against its limit. */
export function MeasuredBefore({ traveler, step }: { traveler: Traveler; step: Step }) {
  return traveler.steps
    .filter((each) => each.sequence < step.sequence)
    .map((each) => <Measured key={each.id} step={each} />);
}
