import { type TapCell, TapMap } from '../../ui/pictures/TapMap.tsx';
import { MeasureEntries } from './MeasureEntries.tsx';
import styles from './measure-entries.module.css';
import { type Entries, type Measure, standingOf } from './traveler.ts';

/** The tap map as it is filled: every zone on both sides of the blade, and a box for each. */
export function TapEntries(props: {
  measures: readonly Measure[];
  all: readonly Measure[];
  entries: Entries;
  onChange: (entries: Entries) => void;
}) {
  const { measures, all, entries } = props;
  const cells = measures.flatMap((measure): TapCell[] => {
    if (!measure.zone) return [];
    const standing = standingOf(measure, { measures: all, entries });
    const state = standing === 'inside' ? 'clear' : standing === 'outside' ? 'too-much' : 'open';
    return [{ ...measure.zone, state, value: entries[measure.id] ?? null, most: measure.high, unit: measure.unit }];
  });
  return (
    <>
      <div className={styles.outline}>
        <TapMap title="Tap map" cells={cells} />
      </div>
      <MeasureEntries {...props} />
    </>
  );
}
