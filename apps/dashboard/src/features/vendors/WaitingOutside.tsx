import { AgeText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import type { OutsideWork } from './vendors.ts';

const columns: readonly Column<OutsideWork>[] = [
  {
    id: 'part',
    header: 'Part',
    value: (row) => `${row.workOrderNumber} ${row.position}`,
    cell: (row) => (
      <>
        <Link href={`/travelers/${row.travelerId}?step=${row.stepId}`}>{row.travelerNumber}</Link> {row.position}
      </>
    ),
  },
  {
    id: 'order',
    header: 'Work order',
    value: (row) => row.workOrderNumber,
    cell: (row) => <Link href={`/work-orders/${row.workOrderId}`}>{row.workOrderNumber}</Link>,
  },
  { id: 'customer', header: 'Customer', value: (row) => row.customer },
  { id: 'work', header: 'Work', value: (row) => row.work },
  {
    id: 'since',
    header: 'Waits for',
    value: (row) => row.readySince,
    cell: (row) => <AgeText instant={row.readySince} />,
  },
  { id: 'blocked', header: 'What stops it', value: (row) => row.blocked ?? '' },
];

/** Parts whose next step is done outside and that are still in the shop. */
export function WaitingOutside({ rows }: { rows: readonly OutsideWork[] }) {
  return (
    <DataTable
      caption="Waiting to go out"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.stepId}
      empty={
        <EmptyState title="No part waits for a vendor">
          Routes of the manual revision say which steps are done outside.
        </EmptyState>
      }
    />
  );
}
