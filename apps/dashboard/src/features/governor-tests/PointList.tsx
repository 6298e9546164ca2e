import { LimitGauge } from '../../ui/pictures/LimitGauge.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './governor.module.css';
import { acceptedPoint, pointMarks, type Run, shownLimits, unitWord } from './governor.ts';

/** Every point with where its standing reading lies; pressing one of an open run brings it to the entry. */
export function PointList(props: { run: Run; chosen: string | undefined; onChoose?: (point: string) => void }) {
  const { run, chosen } = props;
  return (
    <ol className={styles.points} aria-label="Points">
      {run.standing.map(({ point: name, state, value, atRpm, engineRpm }) => {
        const point = run.program.content.points.find((one) => one.name === name);
        if (!point) return null;
        const { low, high } = acceptedPoint(run, point);
        return (
          <li key={name}>
            <button
              type="button"
              className={styles.point}
              aria-current={name === chosen}
              disabled={!props.onChoose}
              onClick={() => props.onChoose?.(name)}
            >
              <span>
                <strong>{name}</strong>
                <br />
                <span className="soft small">
                  {shownLimits(run, point)}
                  {atRpm === null ? '' : `, at ${atRpm} rpm (engine ${engineRpm?.toFixed(0)})`}
                </span>
              </span>
              <span className={styles.reading}>
                {value === null ? null : (
                  <>
                    <strong>{value}</strong> <span className="unit">{unitWord(point.unit)}</span>
                    <br />
                  </>
                )}
                <LimitGauge value={value} low={low ?? null} high={high ?? null} unit={unitWord(point.unit)} />
              </span>
              <StateMark {...pointMarks[state]} />
            </button>
          </li>
        );
      })}
    </ol>
  );
}
