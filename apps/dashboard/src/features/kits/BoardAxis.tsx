import styles from './board.module.css';
import { type BoardScale, mondays, placeOf } from './board-scale.ts';
import { DayLines } from './KitLane.tsx';

const short = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });

/** The dates above the rows. What each mark means stands beside it in words, so no mark has to be known. */
export function BoardAxis({ scale }: { scale: BoardScale }) {
  const today = placeOf(scale, scale.today);
  const days = mondays(scale).filter((date) => {
    const place = placeOf(scale, date);
    return place > 2 && place < 97 && Math.abs(place - today) > 7;
  });
  return (
    <div className={styles.axis} aria-hidden="true">
      <span className="small soft">Kit, work order, unit</span>
      <svg className={styles.lane} height="28" aria-hidden="true">
        <DayLines scale={scale} />
        {days.map((date) => (
          <text key={date} x={`${placeOf(scale, date)}%`} y="14" className={styles.day}>
            {short.format(new Date(`${date}T00:00:00Z`))}
          </text>
        ))}
        <text x={`${today}%`} y="14" className={styles.todayText}>
          Today
        </text>
      </svg>
      <span className="small soft">Needed by</span>
    </div>
  );
}

/** The signs of the bars, in words. */
export function BoardKey() {
  return (
    <ul className={styles.key} aria-hidden="true">
      <KeySign name="pulled" kind="issued" />
      <KeySign name="have" kind="have" />
      <KeySign name="on order" kind="on-order" />
      <KeySign name="short" kind="short" />
      <li>
        <svg width="14" height="16" aria-hidden="true">
          <line className={styles.need} x1="7" x2="7" y1="0" y2="16" />
        </svg>
        need date
      </li>
      <li>
        <svg width="14" height="16" aria-hidden="true">
          <path className={styles.orderBy} d="M7 3 13 12H1z" />
        </svg>
        order by
      </li>
    </ul>
  );
}

function KeySign({ name, kind }: { name: string; kind: 'issued' | 'have' | 'on-order' | 'short' }) {
  return (
    <li>
      <svg width="22" height="16" aria-hidden="true">
        <pattern id="board-key-hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect className={styles.hatch} width="3" height="6" />
        </pattern>
        <rect
          className={`${styles.stretch} ${styles[kind]}`}
          x="1"
          y="2"
          width="20"
          height="12"
          {...(kind === 'on-order' ? { fill: 'url(#board-key-hatch)' } : {})}
        />
      </svg>
      {name}
    </li>
  );
}
