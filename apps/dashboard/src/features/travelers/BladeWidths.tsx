import { BladeOutline } from '../../ui/pictures/BladeOutline.tsx';
import styles from './measure-entries.module.css';
import { type Entries, type Measure, standingOf } from './traveler.ts';

/** A width at a blade station, by its name in the manual: `width at 24 in after repair`. */
const widthAt = /^width at (\d+(?:\.\d+)?) /;

/** The blade drawn from the widths as they are entered, against the least the revision allows; nothing for other steps. */
export function BladeWidths({ measures, entries }: { measures: readonly Measure[]; entries: Entries }) {
  const stations = measures.flatMap((measure) => {
    const station = widthAt.exec(measure.name)?.[1];
    if (station === undefined) return [];
    const text = entries[measure.id];
    const isRead = standingOf(measure, text) === 'inside' || standingOf(measure, text) === 'outside';
    return [{ station, lowest: measure.low, measured: isRead && text !== undefined ? text : null }];
  });
  if (stations.length < 2) return null;
  return (
    <div className={styles.outline}>
      <BladeOutline title="Widths by blade station" stations={stations} unit={measures[0]?.unit ?? ''} />
    </div>
  );
}
