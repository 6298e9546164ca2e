import { type FieldPlane, planesOf } from '@hubwright/contracts/field-balance/planes';
import type { StandingWeight } from '@hubwright/contracts/field-balance/shapes';
import type { ReactNode } from 'react';
import { DateText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type FieldBalance, grams } from './field-balance.ts';

function Fact({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** Who signed, and who supervised a trainee. */
function SignedBy({ of }: { of: { by: { displayName: string }; supervisor: { displayName: string } | null } }) {
  return of.supervisor ? `${of.by.displayName}, supervised by ${of.supervisor.displayName}` : of.by.displayName;
}

const limitsOf = ({ planeName, mostPerPlace, mostPieces, mostInAll, mostPlaces }: FieldPlane) =>
  `${planeName === null ? '' : `${planeName} `}at most ${mostPerPlace} g and ${mostPieces} pieces in a place, ${mostInAll} g in ${mostPlaces} places`;

/** Whose, where and why, by which data, and how it was set up. */
export function BalanceFacts({ balance }: { balance: FieldBalance }) {
  const { spec, setUp } = balance;
  return (
    <dl className="facts">
      <Fact title="Where and when">
        {balance.airport}, <DateText date={balance.plannedOn} />
      </Fact>
      <Fact title="Why">{balance.reason}</Fact>
      <Fact title="Data">
        {spec
          ? `${spec.source}: ${planesOf(spec).map(limitsOf).join('; ')}; wind up to ${spec.mostWind} kt`
          : 'None for this model yet: an inspector enters places and limits'}
      </Fact>
      {setUp ? (
        <Fact title="Set up">
          <SignedBy of={setUp} />, <InstantText instant={setUp.at} />: {setUp.procedure}; wind {setUp.wind} kt,{' '}
          {setUp.weather}; sensor {setUp.sensorPlace}, {setUp.sensorAxis};{' '}
          {setUp.secondSensor
            ? `second sensor ${setUp.secondSensor.sensorPlace}, ${setUp.secondSensor.sensorAxis}; `
            : ''}
          {setUp.phaseReference}, phase counted {setUp.counting}; {setUp.instrument.tag}
        </Fact>
      ) : null}
      {balance.abandoned ? <Fact title="Abandoned">{balance.abandoned}</Fact> : null}
      {balance.balanced ? (
        <Fact title="Balanced">
          <SignedBy of={balance.balanced} />, <InstantText instant={balance.balanced.at} />. {balance.balanced.remarks}
        </Fact>
      ) : null}
      {balance.released ? (
        <Fact title="Released">
          {balance.released.by.displayName}, <InstantText instant={balance.released.at} />. {balance.released.logEntry}
        </Fact>
      ) : null}
    </dl>
  );
}

/** What stands on the propeller, by place. */
export function StandingList(props: {
  balance: FieldBalance;
  onTakeOff: ((weight: StandingWeight) => void) | undefined;
}) {
  const { balance, onTakeOff } = props;
  if (balance.standing.length === 0) return <p className="soft">No dynamic weights stand on the propeller.</p>;
  return (
    <ul className="lines">
      {balance.standing.map((weight) => (
        <li key={`${weight.place} ${weight.lotCode}`}>
          <span>
            <strong>{weight.place}</strong> {weight.plane ? `${weight.plane}, ` : ''}
            {weight.found ? 'as found' : `${weight.pieces} × ${weight.partNumber} of ${weight.lotCode}`}
          </span>
          <span className="row">
            <span className="quantity">{grams(weight.mass)}</span>
            {onTakeOff && !weight.found ? (
              <Button weight="quiet" onPress={() => onTakeOff(weight)}>
                Take off
              </Button>
            ) : null}
          </span>
        </li>
      ))}
    </ul>
  );
}
