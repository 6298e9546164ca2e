import { ownerOperations } from '@hubwright/contracts/customers/owner-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { DateText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';

/** Aircraft that came to this customer or went to another; nothing where none ever did. */
export function AircraftMoves({ customerId }: { customerId: string }) {
  const { rows } = useSuspenseQuery(queryFor(ownerOperations.aircraftMoves, { customerId })).data;
  if (rows.length === 0) return null;
  return (
    <details open>
      <summary>Changed hands ({rows.length})</summary>
      <ul className="lines">
        {rows.map(({ id, aircraft, from, to, on, basis, recordedBy }) => {
          const hasCome = to.id === customerId;
          const other = hasCome ? from : to;
          return (
            <li key={id}>
              <span>
                <span className="code">{aircraft.registration}</span> {hasCome ? 'came from' : 'went to'}{' '}
                <Link href={`/customers/${other.id}`}>{other.name}</Link> on <DateText date={on} />
              </span>
              <span className="small soft">
                {basis}; recorded by {recordedBy}
              </span>
            </li>
          );
        })}
      </ul>
    </details>
  );
}
