import { plainDates } from '../../format/plain-dates.ts';
import { DateText, InstantText } from '../../format/values.tsx';
import type { Supplier } from './suppliers.ts';

/** Every approval and exception, who gave it and on what ground. */
export function SupplierApprovals({ supplier }: { supplier: Supplier }) {
  const { approvals, exceptions, standing } = supplier;
  return (
    <section className="sheet stack">
      <h2>Approval</h2>
      <p>{plainDates(standing)}</p>
      <ul className="stack tight">
        {exceptions.map(({ id, reason, goodUntil, person, at, order }) => (
          <li key={id}>
            Exception until <DateText date={goodUntil} />
            {order ? ` for ${order.number}` : ''}: {reason} <span className="soft">{person.displayName}, </span>
            <InstantText instant={at} />
          </li>
        ))}
        {approvals.map(({ id, approvedUntil, basis, person, at }) => (
          <li key={id}>
            {approvedUntil ? (
              <>
                Approved until <DateText date={approvedUntil} />
              </>
            ) : (
              'Approval ended'
            )}
            : {basis} <span className="soft">{person.displayName}, </span>
            <InstantText instant={at} />
          </li>
        ))}
      </ul>
    </section>
  );
}
