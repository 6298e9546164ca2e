import { controlLimits } from '@hubwright/rules/flow';
import { useQuery } from '@tanstack/react-query';
import { formatInstant } from '../../format/dates.ts';
import { useShop } from '../../format/shop-context.tsx';
import { InstantText } from '../../format/values.tsx';
import { ControlChart } from '../../ui/pictures/ControlChart.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Check, type Equipment, type Log, logQuery } from './equipment.ts';

/** As many results as a chart shows side by side. */
const charted = 30;

function ResultChart({ check, readings }: { check: Check; readings: Log['readings'] }) {
  const { zone } = useShop();
  const own = readings
    .filter(({ quantity }) => quantity === check.name)
    .slice(0, charted)
    .reverse();
  if (check.confirm || own.length < 2) return null;
  const values = own.map(({ value }) => Number(value));
  // A side without a limit ends where the results do.
  const band = { low: check.low ?? String(Math.min(...values)), high: check.high ?? String(Math.max(...values)) };
  return (
    <ControlChart
      title={`${check.name}, result by result`}
      points={own.map(({ takenAt, value }) => ({ label: formatInstant(takenAt, zone), value }))}
      band={band}
      limits={controlLimits(values)}
      unit={check.unit}
    />
  );
}

/** Results as they were taken, charts of the numbers among them, and what was added in between. */
export function EquipmentLog({ equipment }: { equipment: Equipment }) {
  const log = useQuery(logQuery(equipment.id)).data;
  if (!log) return <Skeleton lines={4} />;
  return (
    <div className="stack">
      <div className="pictures-row">
        {equipment.checks.map((check) => (
          <ResultChart key={check.name} check={check} readings={log.readings} />
        ))}
      </div>
      {log.additions.length > 0 ? (
        <div>
          <h3>Additions</h3>
          <ul className="lines small">
            {log.additions.map(({ id, what, amount, unit, addedAt, person }) => (
              <li key={id}>
                <span>
                  <strong className="quantity">
                    {amount} {unit}
                  </strong>{' '}
                  {what}
                </span>
                <span className="soft">
                  {person}, <InstantText instant={addedAt} />
                </span>
              </li>
            ))}
          </ul>
        </div>
      ) : null}
      <div>
        <h3>Newest results</h3>
        <ul className="lines small">
          {log.readings.slice(0, 20).map(({ id, quantity, value, unit, good, takenAt, person, lateReason }) => (
            <li key={id}>
              <span>
                {quantity}{' '}
                <strong className="quantity">
                  {value} {unit}
                </strong>{' '}
                <StateMark state={good ? 'passed' : 'stop'} word={good ? 'good' : 'out'} />
              </span>
              <span className="soft">
                {person}, <InstantText instant={takenAt} />
                {lateReason ? `, entered later: ${lateReason}` : ''}
              </span>
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}
