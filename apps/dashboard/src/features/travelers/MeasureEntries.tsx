import { diameterUnknown } from '@hubwright/rules/blades';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { LimitGauge } from '../../ui/pictures/LimitGauge.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './measure-entries.module.css';
import { type Entries, limitsOf, type Measure, standingOf } from './traveler.ts';
import type { AcceptedMeasure } from './use-accepted.ts';

/** The limits of a measure as the manual's revision gives them, in words. */
export function limitText(measure: AcceptedMeasure): string {
  const { ratio, isNarrowed } = measure;
  const shown = limitWords(measure);
  return `${isNarrowed ? 'accepted ' : ''}${shown}${ratio ? `, ${ratio.toFixed(1)} : 1` : ''}`;
}

function limitWords({ low, high, unit, decimals, chart, basis, isNarrowed }: AcceptedMeasure): string {
  if (chart) return `by the chart against “${chart.by}”`;
  if (basis === diameterUnknown) return `no limit yet: ${basis}`;
  const show = (value: string) => (isNarrowed ? value : Number(value).toFixed(Math.max(decimals, 0)));
  if (low !== null && high !== null) return `${show(low)} to ${show(high)} ${unit}`;
  if (low !== null) return `at least ${show(low)} ${unit}`;
  return high === null ? 'no limit' : `at most ${show(high)} ${unit}`;
}

export const marks = {
  missing: { state: 'open', word: 'to measure' },
  unreadable: { state: 'open', word: 'to measure' },
  inside: { state: 'passed', word: 'inside' },
  outside: { state: 'stop', word: 'outside' },
} as const;

/** One entry per measure, its limit drawn beside it. Every box starts empty: what is measured is typed by who measured it. */
export function MeasureEntries(props: {
  measures: readonly Measure[];
  /** All of the step, where limits of one go by another. */
  all: readonly Measure[];
  entries: Entries;
  onChange: (entries: Entries) => void;
}) {
  return (
    <div className={styles.frame}>
      <div className={styles.entries}>
        {props.measures.map((measure) => {
          const place = props.all.indexOf(measure);
          const text = props.entries[measure.id] ?? '';
          const standing = standingOf(measure, { measures: props.all, entries: props.entries });
          const limits = limitsOf(measure, { measures: props.all, entries: props.entries });
          const { low, high } = limits === null || limits === 'not-read' ? { low: null, high: null } : limits;
          return (
            <div key={measure.id} className={styles.entry}>
              <DecimalField
                name={`values/${place}/value`}
                label={measure.name}
                hint={limitText(measure)}
                unit={measure.unit}
                decimals={Math.max(measure.decimals + 2, 0)}
                value={text}
                onChange={(value) => props.onChange({ ...props.entries, [measure.id]: value })}
                isRequired
              />
              <LimitGauge
                value={standing === 'inside' || standing === 'outside' ? text : null}
                low={low}
                high={high}
                unit={measure.unit}
              />
              <StateMark {...marks[standing]} />
            </div>
          );
        })}
      </div>
    </div>
  );
}
