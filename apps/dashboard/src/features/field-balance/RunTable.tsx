import type { FieldRun } from '@hubwright/contracts/field-balance/shapes';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type FieldBalance, runWords, sensorAfterSensor } from './field-balance.ts';

/** Whether a reading lies within the target, the limit or neither. */
function Judged({ balance, rpm, amplitude }: { balance: FieldBalance; rpm: number; amplitude: string }) {
  const range = balance.spec?.ranges.find(({ fromRpm, toRpm }) => rpm >= fromRpm && rpm <= toRpm);
  if (!range) return null;
  if (Number(amplitude) <= Number(range.target)) return <StateMark state="passed" word="within the target" />;
  if (Number(amplitude) <= Number(range.limit)) return <StateMark state="passed" word="within the limit" />;
  return <StateMark state="stop" word="above the limit" />;
}

function Run(props: { balance: FieldBalance; run: FieldRun; onCorrect: ((run: FieldRun) => void) | undefined }) {
  const { balance, run, onCorrect } = props;
  const isDouble = run.readings.some(({ second }) => second !== undefined);
  const counts = run.supersededById === null && run.setUpId === balance.setUp?.id;
  return (
    <li>
      <span>
        <strong>
          {run.sequence}. {runWords[run.kind]}
        </strong>
        {run.trial ? ` ${run.trial.mass} g in ${run.trial.place ?? `${run.trial.angle}°`}` : ''}{' '}
        <span className="soft small">
          {run.by.displayName}, <InstantText instant={run.at} />
        </span>
        {sensorAfterSensor(run).map(({ rpm, sensor, amplitude, phase }) => (
          <span key={`${rpm} ${sensor}`} className="row tight">
            <span>
              {isDouble ? `Sensor ${sensor + 1}, ` : ''}
              <span className="quantity">{rpm} rpm:</span>{' '}
              <span className="quantity">
                {amplitude} {balance.spec?.unit} at {phase}°
              </span>
            </span>
            {counts && run.kind !== 'trial' ? <Judged balance={balance} rpm={rpm} amplitude={amplitude} /> : null}
          </span>
        ))}
        {run.reason ? <span className="small">Put right: {run.reason}</span> : null}
      </span>
      <span className="row">
        {run.supersededById ? <StateMark state="note" word="was wrong, put right" /> : null}
        {run.setUpId === balance.setUp?.id ? null : <StateMark state="note" word="of an older sheet" />}
        {run.surprising ? <StateMark state="hold" word="no linear propeller reads like this" /> : null}
        {counts && onCorrect ? (
          <Button weight="quiet" onPress={() => onCorrect(run)}>
            Wrong: put it right
          </Button>
        ) : null}
      </span>
    </li>
  );
}

/** Every run as it was read, wrong ones too, each against its limit. */
export function RunTable(props: { balance: FieldBalance; onCorrect: ((run: FieldRun) => void) | undefined }) {
  const { balance, onCorrect } = props;
  if (balance.runs.length === 0) return <p className="soft">Nothing was run yet.</p>;
  return (
    <ul className="lines">
      {balance.runs.map((run) => (
        <Run key={run.id} balance={balance} run={run} onCorrect={onCorrect} />
      ))}
    </ul>
  );
}
