import { InstantText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { PointsAgainstLimits } from '../../ui/pictures/PointsAgainstLimits.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { acceptedPoint, type Run, runMarks, unitWord } from './governor.ts';

/** Every point of this run against its limits, with what earlier tests of the serial ended with, and those tests. */
export function EarlierTests({ run }: { run: Run }) {
  const rows = run.standing.flatMap(({ point: name, value, state }) => {
    const point = run.program.content.points.find((one) => one.name === name);
    if (!point) return [];
    const earlier = run.history
      .toReversed()
      .flatMap(({ number, values }) =>
        values
          .filter((one) => one.point === name && one.unit === point.unit)
          .map((one) => ({ label: number, value: one.value })),
      );
    const { low = null, high = null } = acceptedPoint(run, point);
    const limits = { low, high };
    return [{ name, ...limits, unit: unitWord(point.unit), value, isGood: state === 'good', earlier }];
  });
  return (
    <div className="stack">
      <PointsAgainstLimits title={`Points of ${run.number} against limits`} rows={rows} />
      {run.history.length === 0 ? (
        <p className="soft">This serial was not on our bench before.</p>
      ) : (
        <ul className="lines">
          {run.history.map(({ runId, number, workOrderNumber, application, startedAt, state }) => (
            <li key={runId}>
              <span>
                <Link href={`/governor-runs/${runId}`}>{number}</Link> {workOrderNumber}, {application}{' '}
                <InstantText instant={startedAt} />
              </span>
              <StateMark {...runMarks[state]} />
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
