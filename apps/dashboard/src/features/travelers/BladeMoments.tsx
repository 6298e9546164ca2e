import type { WorkOrderDimensions } from '@hubwright/contracts/work-orders/dimension-operations';
import { arrangeBlades } from '@hubwright/rules/blades';
import { PropellerFront } from '../../ui/pictures/PropellerFront.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

interface Moment {
  readonly position: string;
  readonly serial: string;
  /** The newest reading; null while it is not measured on this visit. */
  readonly value: string | null;
  readonly unit: string;
}

function momentsOf({ parts }: WorkOrderDimensions): Moment[] {
  return parts
    .filter(({ partClass, disposition }) => partClass === 'blade' && disposition !== 'reject')
    .flatMap(({ position, serial, rows }) => {
      const row = rows.find(({ dimension }) => dimension === 'static-moment');
      return row ? [{ position, serial, unit: row.unit, value: (row.afterRepair ?? row.asFound)?.value ?? null }] : [];
    })
    .sort((a, b) => a.position.localeCompare(b.position, 'en', { numeric: true }));
}

/** Which blade would stand where; said only where another order leaves less. */
function Arrangement({ moments }: { moments: readonly Moment[] }) {
  const values = moments.flatMap(({ value }) => (value === null ? [] : [value]));
  const found = values.length === moments.length ? arrangeBlades(values) : undefined;
  if (!found) return null;
  const { unit } = moments[0] ?? { unit: '' };
  const left = (moment: number) => `${moment.toFixed(2)} ${unit}`;
  const stay = found.order.every((blade, index) => blade === index + 1);
  return (
    <p>
      As the blades stand, their moments leave {left(found.now)} of one another.{' '}
      {stay ? (
        <StateMark state="passed" word="no other order leaves less" />
      ) : (
        <>
          <strong>
            Around the hub in the order {found.order.map((blade) => moments[blade - 1]?.position).join(', ')} they would
            leave {left(found.left)}.
          </strong>{' '}
          <span className="soft">Only the current approved manual says whether a blade may change its place.</span>
        </>
      )}
    </p>
  );
}

function bladeOf({ position, serial, value, unit }: Moment, { least, isApart }: { least: number; isApart: boolean }) {
  const named = `${position}, serial ${serial}`;
  if (value === null)
    return { key: position, label: '?', state: 'open' as const, words: `${named}, static moment not measured` };
  const over = Number(value) - least;
  const text = over.toFixed(value.split('.')[1]?.length ?? 0);
  return {
    ...{ key: position, label: over === 0 ? '0' : `+${text}` },
    state: isApart ? ('stop' as const) : ('passed' as const),
    words: `${named}, ${value} ${unit}, ${text} over the lightest${isApart ? ', too far from its mate' : ''}`,
  };
}

/** The blades by their static moments, seen from the front: how far each is from the lightest. */
export function BladeMoments({ of }: { of: WorkOrderDimensions }) {
  const moments = momentsOf(of);
  if (moments.length < 2) return null;
  const read = moments.flatMap(({ value }) => (value === null ? [] : [Number(value)]));
  const least = Math.min(...read);
  const apart = new Set(
    of.spreads
      .filter(({ dimension, verdict }) => dimension === 'static-moment' && verdict === 'fail')
      .flatMap(({ widest }) => widest?.between ?? []),
  );
  const blades = moments.map((one) => bladeOf(one, { least, isApart: apart.has(one.position) }));
  return (
    <div className="pictures-row">
      <figure className="polar">
        <PropellerFront
          title="Static moments of the blades, seen from the front"
          blades={blades}
          hub={{ key: 'hub', label: '', state: 'open', words: 'hub' }}
        />
        <figcaption className="small">
          Static moment of each blade over the lightest ({read.length > 0 ? least : 'none measured'} {moments[0]?.unit}
          ); blade 1 up
        </figcaption>
      </figure>
      <Arrangement moments={moments} />
    </div>
  );
}
