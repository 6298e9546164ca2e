import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { type FieldPlane, planesOf } from '@hubwright/contracts/field-balance/planes';
import type { FieldBalanceSpec } from '@hubwright/contracts/field-balance/shapes';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { countOf } from '../../format/numbers.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { EnterData } from './enter-data.tsx';
import { EnterHardware } from './enter-hardware.tsx';
import { dataQuery, hardwareQuery } from './field-balance.ts';

const limitWords = ({ counting, radiusUnit }: FieldBalanceSpec, plane: FieldPlane) =>
  `${countOf(plane.places.length, 'place')} counted ${counting} at ${plane.radius} ${radiusUnit}; at most ${plane.mostPerPlace} g and ${countOf(plane.mostPieces, 'piece')} in one, ${plane.mostInAll} g in ${countOf(plane.mostPlaces, 'place')}`;

/** Places and limits by model, each with the document it is from. */
export function DataSheet({ signer }: { signer: Signer }) {
  const rows = useSuspenseQuery(dataQuery).data.rows;
  const mayEnter = useMay(fieldBalanceOperations.enterFieldBalanceData);
  const [isOpen, setOpen] = useState(false);
  return (
    <div className="stack">
      {mayEnter ? (
        <div>
          <Button onPress={() => setOpen(true)}>Enter places and limits</Button>
        </div>
      ) : null}
      {rows.length === 0 ? (
        <EmptyState title="No model has places and limits">
          An inspector enters them from the approved document.
        </EmptyState>
      ) : null}
      <ul className="lines">
        {rows.map((data) => (
          <li key={data.id}>
            <span>
              <strong>{data.model.designation}</strong> {data.source}
              <br />
              {planesOf(data).map((plane) => (
                <span key={plane.planeName}>
                  {plane.planeName ? `${plane.planeName}: ` : ''}
                  {limitWords(data, plane)}
                  <br />
                </span>
              ))}
              {data.ranges
                .map(
                  ({ fromRpm, toRpm, limit, target }) => `${fromRpm} to ${toRpm} rpm: limit ${limit}, target ${target}`,
                )
                .join('; ')}{' '}
              {data.unit}; wind up to {data.mostWind} kt; readings repeat within {data.scatter} {data.unit}
              <br />
              <span className="soft small">
                {data.enteredBy.displayName}, <InstantText instant={data.enteredAt} />
              </span>
            </span>
          </li>
        ))}
      </ul>
      {isOpen ? <EnterData signer={signer} onClose={() => setOpen(false)} /> : null}
    </div>
  );
}

/** Parts of the stock that serve as weights, and what lies in bins of them. */
export function HardwareSheet() {
  const rows = useSuspenseQuery(hardwareQuery).data.rows;
  const mayEnter = useMay(fieldBalanceOperations.enterBalanceHardware);
  const [isOpen, setOpen] = useState(false);
  return (
    <div className="stack">
      {mayEnter ? (
        <div>
          <Button onPress={() => setOpen(true)}>Say what a piece weighs</Button>
        </div>
      ) : null}
      {rows.length === 0 ? (
        <EmptyState title="No part serves as a balance weight">
          Say what one piece of a part weighs, and it does.
        </EmptyState>
      ) : null}
      <ul className="lines">
        {rows.map(({ part, mass, lots, enteredBy }) => (
          <li key={part.id}>
            <span>
              <strong className="code">{part.number}</strong> {part.description}{' '}
              <span className="soft small">weighed by {enteredBy.displayName}</span>
              <br />
              {lots.map(({ code, onHand }) => `${code}: ${onHand}`).join(', ') || 'none in bins'}
            </span>
            <span className="quantity">{mass} g</span>
          </li>
        ))}
      </ul>
      {isOpen ? <EnterHardware onClose={() => setOpen(false)} /> : null}
    </div>
  );
}
