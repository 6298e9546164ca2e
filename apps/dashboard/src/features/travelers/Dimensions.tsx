import type { MeasuredPart, WorkOrderDimensions } from '@hubwright/contracts/work-orders/dimension-operations';
import { Button } from '../../ui/Button.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { DimensionTable } from './DimensionTable.tsx';
import type { Carrying } from './record-carried.tsx';

type Recording = ((carrying: Omit<Carrying, 'workOrderId'>) => void) | undefined;

/** The diameter limits go by, and what the propeller is called at it. */
export function DiameterLine(props: {
  of: WorkOrderDimensions['diameter'];
  unitId: string;
  onRecord: Recording;
  onShorten: (() => void) | undefined;
}) {
  const { current, designation, shortenTo, leastEligible, allowed } = props.of;
  const names = { itemId: props.unitId, kind: 'diameter', place: '', title: 'The current diameter' } as const;
  return (
    <div className="row between">
      <p>
        {current === null ? (
          <StateMark state="hold" word="current diameter not on record" />
        ) : (
          <>
            Diameter <strong className="quantity">{current}</strong>
          </>
        )}
        {shortenTo ? (
          <>
            , shortened to <strong className="quantity">{shortenTo}</strong> on this visit
          </>
        ) : null}
        {designation ? <span className="soft"> {designation}</span> : null}
        <span className="soft small">
          {' '}
          {leastEligible === null
            ? 'The least diameter of this installation is not on record.'
            : `This installation is approved down to ${leastEligible}.`}
        </span>
      </p>
      <span className="row">
        {props.onRecord && shortenTo === null ? (
          <Button
            onPress={() =>
              props.onRecord?.({ ...names, values: allowed.map(({ diameter }) => diameter), bases: ['measured'] })
            }
          >
            Record the diameter
          </Button>
        ) : null}
        {props.onShorten && current !== null && shortenTo === null ? (
          <Button onPress={props.onShorten}>Shorten every blade</Button>
        ) : null}
      </span>
    </div>
  );
}

/** Parts that stay together: the set found at each place, and the one built in. */
export function MatchedSets(props: { of: WorkOrderDimensions['matchedSets']; unitId: string; onRecord: Recording }) {
  return (
    <ul className="lines">
      {props.of.map(({ place, pieces, found, built }) => (
        <li key={place}>
          <span>
            <strong>{place}</strong> <span className="soft">{pieces} pieces that stay together</span>
            <br />
            {found ? `set ${found}` : <span className="soft">no set on record</span>}
          </span>
          <span className="row">
            <StateMark
              state={built ? 'passed' : found ? 'waiting' : 'open'}
              word={built ? `set ${built} is in` : found ? 'to be put back' : 'to be looked at'}
            />
            {props.onRecord ? (
              <Button
                aria-label={`Record the set of ${place}`}
                onPress={() =>
                  props.onRecord?.({
                    ...{ itemId: props.unitId, kind: 'matched-set', place, title: `Set of ${place}`, values: [] },
                    bases: ['as-found', 'kept', 'new'],
                  })
                }
              >
                Record
              </Button>
            ) : null}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** One part with all its dimensions, and the oversize steps it carries. */
export function PartDimensions(props: {
  part: MeasuredPart;
  carried: WorkOrderDimensions['carried'];
  onRecord: Recording;
  isOpen: boolean;
}) {
  const { part, onRecord } = props;
  const steps = new Map(
    props.carried
      .filter(({ itemId, kind }) => itemId === part.itemId && kind === 'oversize')
      .map(({ place, value }) => [place, value]),
  );
  const outside = part.rows.filter(({ asFound, afterRepair }) => (afterRepair ?? asFound)?.pass === false).length;
  return (
    <details open={props.isOpen}>
      <summary>
        <strong>{part.position}</strong> <span className="code">{part.serial}</span>{' '}
        {part.disposition === 'reject' ? <StateMark state="stop" word="rejected" /> : null}
        {outside > 0 && part.disposition !== 'reject' ? <StateMark state="stop" word={`${outside} outside`} /> : null}
        {part.corrosion.map((one) => (
          <span key={one.findingId} className="soft small">
            {' '}
            corrosion at {one.area}: {one.class}
          </span>
        ))}
      </summary>
      <div className="stack">
        <DimensionTable part={part} />
        {part.oversizes.map(({ place, steps: named }) => (
          <p key={place} className="row">
            <span>
              {place}: {steps.get(place) ? `oversize ${steps.get(place)}` : 'base size'}
            </span>
            {onRecord ? (
              <Button
                weight="quiet"
                aria-label={`Record an oversize step of ${place} on ${part.position}`}
                onPress={() =>
                  onRecord({
                    ...{ itemId: part.itemId, kind: 'oversize', place, title: `Oversize step of ${place}` },
                    ...{ values: named, bases: ['new', 'as-found'] },
                  })
                }
              >
                Record an oversize step
              </Button>
            ) : null}
          </p>
        ))}
      </div>
    </details>
  );
}
