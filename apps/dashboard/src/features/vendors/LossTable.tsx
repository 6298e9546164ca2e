import { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { usePages } from '../../api/pages.ts';
import { InstantText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { lossWords, type VendorLoss } from './vendors.ts';

const columns: readonly Column<VendorLoss>[] = [
  { id: 'at', header: 'Written off', value: (row) => row.at, cell: (row) => <InstantText instant={row.at} /> },
  {
    id: 'what',
    header: 'What',
    value: (row) => `${row.quantity} × ${row.part}`,
    cell: (row) => (
      <>
        {row.quantity} × {row.part} {row.lot ? <Link href={`/lots/${row.lot.id}`}>{row.lot.code}</Link> : null}
      </>
    ),
  },
  { id: 'serial', header: 'Serial', value: (row) => row.serial ?? '' },
  { id: 'position', header: 'Position', value: (row) => row.position },
  { id: 'how', header: 'How', value: (row) => lossWords[row.how] },
  { id: 'owner', header: 'Whose', value: (row) => row.owner },
  {
    id: 'unit',
    header: 'Work order',
    value: (row) => row.workOrder.number,
    cell: (row) => <Link href={`/work-orders/${row.workOrder.id}`}>{row.workOrder.number}</Link>,
  },
  { id: 'vendor', header: 'Vendor', value: (row) => `${row.vendor}, ${row.order}` },
  { id: 'paper', header: 'The vendor’s paper', value: (row) => row.vendorPaper },
  { id: 'reason', header: 'What happened', value: (row) => row.reason },
  {
    id: 'who',
    header: 'Signed by',
    value: (row) => (row.witness ? `${row.writtenOffBy}, seen by ${row.witness}` : row.writtenOffBy),
  },
];

/** What vendors lost: of one order, one unit, or all. A page that is about something else shows nothing where nothing was lost. */
export function LossTable({ of, title }: { of: { workOrderId?: string; unitId?: string }; title?: string }) {
  const losses = usePages(lossOperations.listVendorLosses, of);
  if (title && losses.rows.length === 0) return null;
  const table = (
    <PagesFrame of={losses}>
      <DataTable
        caption="Lost at vendors"
        rows={losses.rows}
        columns={columns}
        rowKey={(row) => row.id}
        empty={
          <EmptyState title="No vendor has lost anything">
            What a vendor says will not come back is written off on its order, under “Out”.
          </EmptyState>
        }
      />
    </PagesFrame>
  );
  if (!title) return table;
  return (
    <section className="sheet stack" aria-labelledby="lost-at-vendors">
      <h2 id="lost-at-vendors">{title}</h2>
      <p className="small soft">These do not come back. Tell the owner named; what the unit lacks is asked of stock.</p>
      {table}
    </section>
  );
}
