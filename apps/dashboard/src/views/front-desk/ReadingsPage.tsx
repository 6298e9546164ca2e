import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useMay } from '../../api/me.ts';
import { customerQuery } from '../../features/customers/customers.ts';
import { ReadingsGrid } from '../../features/customers/readings-grid.tsx';
import { useToday } from '../../format/use-today.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';

/** A round of readings: one day, a figure for each aircraft. */
export function ReadingsPage() {
  const { customerId = '' } = useParams({ strict: false }) as { customerId?: string };
  const customer = useSuspenseQuery(customerQuery(customerId)).data;
  const mayRecord = useMay(readingsOperations.recordReadings);
  const today = useToday();
  return (
    <>
      <ViewHead title={`Readings of ${customer.code}`} question={`${customer.name}: what do their meters show now?`}>
        <Link href={`/customers/${customerId}`}>Back to the customer</Link>
      </ViewHead>
      <section className="sheet stack" aria-label="Readings">
        {customer.aircraft.length === 0 ? (
          <EmptyState title="No aircraft yet">Bring their table in, or add the aircraft first.</EmptyState>
        ) : mayRecord ? (
          <ReadingsGrid customer={customer} today={today} />
        ) : (
          <EmptyState title="The front desk enters readings">
            They stand beside each aircraft of the customer.
          </EmptyState>
        )}
      </section>
    </>
  );
}
