import { BladeOutline } from '../../ui/pictures/BladeOutline.tsx';
import styles from './measure-entries.module.css';
import { type Entries, type Measure, standingOf } from './traveler.ts';

/** The blade drawn from the widths as they are entered, against the least the revision allows; nothing for other steps. */
export function BladeWidths({ measures, entries }: { measures: readonly Measure[]; entries: Entries }) {
  const stations = measures.flatMap((measure) => {
    const { station } = measure;
    if (measure.dimension !== 'width' || station === null) return [];
    const standing = standingOf(measure, { measures, entries });
    const isRead = standing === 'inside' || standing === 'outside';
    return [{ station, lowest: measure.low, measured: isRead ? (entries[measure.id] ?? null) : null }];
  });
  if (stations.length < 2) return null;
  return (
    <div className={styles.outline}>
      <BladeOutline title="Widths by blade station" stations={stations} unit={measures[0]?.unit ?? ''} />
    </div>
  );
}
