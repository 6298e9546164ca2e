import { fleetKinds, fleetRows } from '@hubwright/contracts/imports/fleet-kinds';
import { fleetTableOperations } from '@hubwright/contracts/imports/fleet-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { customerQuery } from '../../features/customers/customers.ts';
import { ChooseTable } from '../../features/imports/ChooseTable.tsx';
import { FleetTablesDone } from '../../features/imports/FleetTablesDone.tsx';
import { TablePreview } from '../../features/imports/TablePreview.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

const address = z.object({ kind: z.enum(fleetKinds).catch('fleet'), table: z.string().catch('') });

/** What a customer sends of their fleet: looked at row by row, then on record whole or not at all. */
export function FleetTablesPage() {
  const { customerId = '' } = useParams({ strict: false }) as { customerId?: string };
  const customer = useSuspenseQuery(customerQuery(customerId)).data;
  const [{ kind, table }, setAddress] = useAddress(address);
  const done = usePages(fleetTableOperations.listFleetTables, { customerId });
  const mayBring = useMay(fleetTableOperations.applyFleetTable);
  const close = () => setAddress({ table: '' });
  return (
    <>
      <ViewHead
        title={`Tables of ${customer.code}`}
        question={`${customer.name}: what does their table say, and what of it is not on record?`}
      >
        <Link href={`/customers/${customerId}`}>Back to the customer</Link>
      </ViewHead>
      <div className="stack">
        {mayBring ? (
          <section className="sheet stack" aria-labelledby="bring">
            <h2 id="bring">Bring a table in</h2>
            <ChooseTable
              kind={kind}
              kinds={fleetKinds}
              at={{
                send: `/api/customers/${customerId}/fleet-tables/${kind}`,
                template: `/api/fleet-table-templates/${kind}`,
              }}
              mostRows={fleetRows}
              onKind={(chosen) => setAddress({ kind: chosen, table: '' })}
              onSent={(id) => setAddress({ table: id })}
            />
            {table ? (
              <TablePreview key={table} whose="customer" importId={table} onApplied={close} onClose={close} />
            ) : null}
          </section>
        ) : null}
        <section className="sheet stack" aria-labelledby="done">
          <h2 id="done">Taken over so far</h2>
          <PagesFrame of={done}>
            <FleetTablesDone rows={done.rows} />
          </PagesFrame>
        </section>
      </div>
    </>
  );
}
