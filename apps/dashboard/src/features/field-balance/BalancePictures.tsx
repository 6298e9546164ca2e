import { PolarPlot } from '../../ui/pictures/PolarPlot.tsx';
import { PropellerFront } from '../../ui/pictures/PropellerFront.tsx';
import { countingRuns, type FieldBalance, frontOf, pointsOf } from './field-balance.ts';

/** Where weights stand, and where the vibration went from run to run at each speed. */
export function BalancePictures({ balance }: { balance: FieldBalance }) {
  const { spec, setUp } = balance;
  const front = frontOf(balance);
  const speeds = countingRuns(balance)[0]?.readings ?? [];
  return (
    <div className="pictures-row">
      {front.blades.length > 0 && spec ? (
        <figure className="polar">
          <PropellerFront title={`Weights of ${balance.propeller.serial}, seen from the front`} {...front} />
          <figcaption className="small">
            Seen from the front; angles count {spec.counting} from blade 1, at radius {spec.radius} {spec.radiusUnit}
          </figcaption>
        </figure>
      ) : null}
      {speeds.map(({ rpm }, at) => {
        const range = spec?.ranges.find(({ fromRpm, toRpm }) => rpm >= fromRpm && rpm <= toRpm);
        return range && spec ? (
          <PolarPlot
            key={rpm}
            title={`Vibration at ${rpm} rpm`}
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
