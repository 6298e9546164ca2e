import type { ReactNode } from 'react';
import { DateText, DueText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type OrderRow, orderMark } from './orders.ts';

const columns: readonly Column<OrderRow>[] = [
  {
    id: 'number',
    header: 'Order',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  { id: 'supplier', header: 'Supplier', value: (row) => row.supplier.name },
  {
    id: 'state',
    header: 'State',
    value: (row) => orderMark(row).word,
    cell: (row) => <StateMark {...orderMark(row)} />,
  },
  { id: 'ordered', header: 'Ordered', value: (row) => row.orderedOn, cell: (row) => <DateText date={row.orderedOn} /> },
  {
    id: 'next',
    header: 'Next due',
    value: (row) => row.nextDue,
    cell: (row) => (row.nextDue ? <DueText date={row.nextDue} /> : <span className="soft">nothing more</span>),
  },
  { id: 'lines', header: 'Lines', value: (row) => row.lines, isNumber: true },
  { id: 'open', header: 'Still to come', value: (row) => row.openPieces, isNumber: true },
];

/** Purchase orders, newest first. */
export function OrderTable(props: { rows: readonly OrderRow[]; tools: ReactNode }) {
  return (
    <DataTable
      caption="Purchase orders"
      rows={props.rows}
      columns={columns}
      rowKey={(row) => row.id}
      rowHref={(row) => `/orders/${row.id}`}
      tools={props.tools}
      empty={
        <EmptyState title="No order fits">Clear the filter, or order what is short from the shortages.</EmptyState>
      }
    />
  );
}
