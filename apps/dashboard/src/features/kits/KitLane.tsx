import { useId } from 'react';
import { Hatch } from '../../ui/pictures/Hatch.tsx';
import styles from './board.module.css';
import { type BoardScale, barOf, mondays, placeOf, stretches } from './board-scale.ts';
import type { KitRow } from './kit-board.ts';
import { barWords } from './kit-words.ts';

const percent = (share: number) => `${share}%`;

/** The days all rows share: Mondays as hairs, today as a line. */
export function DayLines({ scale }: { scale: BoardScale }) {
  return (
    <>
      {mondays(scale).map((date) => (
        <line
          key={date}
          className={styles.monday}
          x1={percent(placeOf(scale, date))}
          x2={percent(placeOf(scale, date))}
          y2="100%"
        />
      ))}
      <line
        className={styles.today}
        x1={percent(placeOf(scale, scale.today))}
        x2={percent(placeOf(scale, scale.today))}
        y2="100%"
      />
    </>
  );
}

/** From the need date on: how long the builder waits for what comes late, or that nobody knows. */
function Wait({ scale, kit }: { scale: BoardScale; kit: KitRow }) {
  if (kit.late + kit.short === 0) return null;
  const { right } = barOf(scale, kit.needBy);
  const isNever = kit.wholeOn === 'never';
  const end = kit.wholeOn === 'never' ? 100 : placeOf(scale, kit.wholeOn);
  if (end <= right) return null;
  return (
    <g className={isNever ? styles.never : styles.late}>
      <line x1={percent(right)} x2={percent(end)} y1="20" y2="20" />
      {isNever ? null : <circle cx={percent(end)} cy="20" r="4" />}
    </g>
  );
}

/** One kit on the shared days: its bar ends at the need date, marked by a post; what comes later trails behind the post. */
export function KitLane({ scale, kit }: { scale: BoardScale; kit: KitRow }) {
  const hatch = useId();
  const need = percent(placeOf(scale, kit.needBy));
  return (
    <svg className={styles.lane} height="40" role="img" aria-label={barWords(kit)}>
      <Hatch id={hatch} scale={0.75} />
      <DayLines scale={scale} />
      <Wait scale={scale} kit={kit} />
      {stretches(scale, kit).map(({ kind, x, width }) => (
        <rect
          key={kind}
          className={`${styles.stretch} ${styles[kind]}`}
          x={percent(x)}
          width={percent(width)}
          y="12"
          height="16"
          {...(kind === 'on-order' || kind === 'late' ? { fill: `url(#${hatch})` } : {})}
        />
      ))}
      {kit.orderBy && kit.short > 0 && kit.orderBy >= scale.from ? (
        <svg x={percent(placeOf(scale, kit.orderBy))} y="29" overflow="visible" aria-hidden="true">
          <path className={styles.orderBy} d="M0 0 6 9H-6z" />
        </svg>
      ) : null}
      <line className={styles.need} x1={need} x2={need} y1="4" y2="36" />
    </svg>
  );
}
