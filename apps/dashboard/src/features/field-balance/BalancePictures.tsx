import { planesOf } from '@hubwright/contracts/field-balance/planes';
import { PolarPlot } from '../../ui/pictures/PolarPlot.tsx';
import { PropellerFront } from '../../ui/pictures/PropellerFront.tsx';
import {
  countingRuns,
  type FieldBalance,
  frontOf,
  lotLetters,
  pointsOf,
  sensorAfterSensor,
  sensorsOf,
} from './field-balance.ts';

/** Where weights stand in each plane, and where the vibration went from run to run at each speed and sensor. */
export function BalancePictures({ balance }: { balance: FieldBalance }) {
  const { spec, setUp, bladeCount, propeller } = balance;
  if (!spec) return null;
  const [first] = countingRuns(balance);
  const lots = lotLetters(balance.standing).map(({ lot, letter }) => `${letter} ${lot}`);
  const sensors = sensorsOf(setUp);
  return (
    <div className="pictures-row">
      {planesOf(spec).map((plane) =>
        bladeCount > 0 ? (
          <figure key={plane.planeName} className="polar">
            <PropellerFront
              title={`${plane.planeName ?? 'Weights'} of ${propeller.serial}, seen from the front`}
              {...frontOf(balance, plane)}
            />
            <figcaption className="small">
              {plane.planeName ? <strong>{plane.planeName}: </strong> : null}
              Seen from the front; angles count {spec.counting} from blade 1, at radius {plane.radius} {spec.radiusUnit}
              {lots.length > 0 ? `. Lots: ${lots.join(', ')}` : ''}
            </figcaption>
          </figure>
        ) : null,
      )}
      {(first ? sensorAfterSensor(first) : []).map(({ rpm, sensor }, at) => {
        const range = spec.ranges.find(({ fromRpm, toRpm }) => rpm >= fromRpm && rpm <= toRpm);
        return range ? (
          <PolarPlot
            key={`${rpm} ${sensor}`}
            title={`Vibration at ${rpm} rpm${sensors ? `, ${sensors[sensor]}` : ''}`}
            points={pointsOf(balance, at)}
            unit={spec.unit}
            limit={Number(range.limit)}
            target={Number(range.target)}
            counting={setUp?.counting ?? 'clockwise'}
          />
        ) : null;
      })}
    </div>
  );
}
