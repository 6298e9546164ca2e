import { useSuspenseQuery } from '@tanstack/react-query';
import { countOf } from '../../format/numbers.ts';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { travelersQuery } from './traveler.ts';

/** The travelers of one unit: how far each is, and what its next step waits for. */
export function TravelerList({ workOrderId }: { workOrderId: string }) {
  const { rows } = useSuspenseQuery(travelersQuery(workOrderId)).data;
  if (rows.length === 0) {
    return <EmptyState title="No traveler yet">They are raised when the teardown begins.</EmptyState>;
  }
  return (
    <ul className="lines">
      {rows.map((row) => (
        <li key={row.id} className="row between">
          <span>
            <Link href={`/travelers/${row.id}`}>{row.number}</Link> {row.title},{' '}
            <span className="code">{row.serial}</span>{' '}
            <span className="soft small">
              {row.stepsDone} of {countOf(row.steps, 'step')}
            </span>
          </span>
          {row.next ? (
            <span>
              {row.next.title}{' '}
              <StateMark state={row.next.blocked ? 'waiting' : 'open'} word={row.next.blocked?.detail ?? 'its turn'} />
            </span>
          ) : (
            <StateMark
              state={row.disposition === 'reject' ? 'stop' : 'signed'}
              word={row.disposition ?? 'all signed'}
            />
          )}
        </li>
      ))}
    </ul>
  );
}
