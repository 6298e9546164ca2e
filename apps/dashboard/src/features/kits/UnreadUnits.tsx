import { countOf } from '../../format/numbers.ts';
import { Link } from '../../ui/Link.tsx';
import type { ExpectedDemand } from './expected-demand.ts';

/** Units that are counted nowhere, because their list goes by a serial that nobody has read. */
export function UnreadUnits({ of }: { of: ExpectedDemand }) {
  const { part, unread } = of;
  if (unread.length === 0) return null;
  return (
    <section className="sheet stack">
      <h2>Not counted: serials not read yet</h2>
      <p>
        The list asks for {part.number} by serial, and the serial of {countOf(unread.length, 'unit')} is not on record.
        Once it is read, what the unit needs stands in its kit or in what is expected.
      </p>
      <ul className="lines">
        {unread.map(({ id, unit, workOrderId, workOrder }) => (
          <li key={id}>
            <span>
              <Link href={`/units/${id}`}>{unit}</Link>
              {workOrderId ? (
                <>
                  , <Link href={`/work-orders/${workOrderId}`}>{workOrder}</Link>
                </>
              ) : (
                <span className="soft">, comes due</span>
              )}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
