import { DecimalField } from '../../ui/DecimalField.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { limitText, marks } from './MeasureEntries.tsx';
import styles from './measure-entries.module.css';
import { type Entries, type Measure, standingOf } from './traveler.ts';

/** The values of a step as a grid is filled. */
export interface Filling {
  /** All of the step, where limits of one go by another. */
  readonly all: readonly Measure[];
  readonly entries: Entries;
  readonly onChange: (entries: Entries) => void;
}

/** One box of a grid: its row and column name it; the limit stands over it, how it stands and what it was under it. */
export function GridCell({ measure, filling, before = '' }: { measure: Measure; filling: Filling; before?: string }) {
  const { all, entries, onChange } = filling;
  const standing = standingOf(measure, { measures: all, entries });
  return (
    <td className={standing === 'outside' ? styles.isOutside : undefined}>
      <DecimalField
        name={`values/${all.indexOf(measure)}/value`}
        label={measure.name}
        hint={limitText(measure)}
        size={6}
        decimals={Math.max(measure.decimals + 2, 0)}
        value={entries[measure.id] ?? ''}
        onChange={(value) => onChange({ ...entries, [measure.id]: value })}
        isRequired
      />
      <span className={styles.cellFoot}>
        <StateMark {...marks[standing]} />
        {before ? <span className="soft small">{before}</span> : null}
      </span>
    </td>
  );
}
