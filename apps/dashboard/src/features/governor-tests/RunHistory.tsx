import { InstantText } from '../../format/values.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { pointMarks, type Run, unitWord } from './governor.ts';

/** Everything that was read and adjusted, newest first; what counts no more stays in sight. */
export function RunHistory({ run }: { run: Run }) {
  const unitOf = (name: string) =>
    unitWord(run.program.content.points.find((point) => point.name === name)?.unit ?? '');
  const lines = [
    ...run.readings.map((reading) => ({ kind: 'reading' as const, ...reading })),
    ...run.adjustments.map((adjustment) => ({ kind: 'adjustment' as const, ...adjustment })),
  ].sort((one, other) => other.sequence - one.sequence);
  if (lines.length === 0) return <p className="soft">Nothing was read yet.</p>;
  return (
    <ol className="lines" aria-label="Readings and adjustments, newest first">
      {lines.map((line) =>
        line.kind === 'reading' ? (
          <li key={line.id}>
            <span>
              {line.point} <strong>{line.value}</strong> {unitOf(line.point)}
              {line.asRead.unit === run.program.content.points.find(({ name }) => name === line.point)?.unit
                ? ''
                : `, read as ${line.asRead.value} ${unitWord(line.asRead.unit)}`}
              <span className="soft small">
                {' '}
                oil {line.oilTemperature} {unitWord(run.program.content.oil.unit)}, by {line.source}
                {line.asRead.channel ? ` ${line.asRead.channel}` : ''}, {line.takenBy.initials}{' '}
                <InstantText instant={line.takenAt} />
              </span>
            </span>
            <span className="row">
              {line.stands ? null : <span className="soft small">counts no more</span>}
              <StateMark {...pointMarks[line.pass ? 'good' : 'out']} />
            </span>
          </li>
        ) : (
          <li key={line.id}>
            <span>
              Adjusted: {line.what}, from {line.before} to {line.after}
              <span className="soft small">
                {' '}
                {line.madeBy.initials} <InstantText instant={line.madeAt} />
              </span>
            </span>
            <StateMark state="note" word={`opened ${line.reopens.length}`} />
          </li>
        ),
      )}
    </ol>
  );
}
