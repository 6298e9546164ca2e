import type { ReactNode } from 'react';
import { DueText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Expected } from './orders.ts';

const columns: readonly Column<Expected>[] = [
  {
    id: 'part',
    header: 'Part',
    value: (row) => row.part.number,
    cell: (row) => (
      <>
        <span className="code">{row.part.number}</span> <span className="soft">{row.part.description}</span>
      </>
    ),
  },
  { id: 'open', header: 'Still to come', value: (row) => row.open, isNumber: true },
  {
    id: 'due',
    header: 'Due',
    value: (row) => row.expectedOn,
    cell: (row) => (
      <span className="row tight">
        {row.late ? <StateMark state="waiting" word="late" /> : null}
        <span>
          <DueText date={row.expectedOn} />
        </span>
      </span>
    ),
  },
  {
    id: 'order',
    header: 'Order',
    value: (row) => row.order.number,
    cell: (row) => <span className="code">{row.order.number}</span>,
  },
  { id: 'supplier', header: 'Supplier', value: (row) => row.supplier.name },
];

/** What lands when: order lines still open, soonest first. A row leads to receiving against it. */
export function ExpectedTable(props: {
  rows: readonly Expected[];
  hrefOf: (row: Expected) => string;
  tools: ReactNode;
  /** Stands beside the box being opened: only what tells one line from another. */
  isBeside: boolean;
}) {
  return (
    <DataTable
      caption="Expected deliveries"
      rows={props.rows}
      columns={props.isBeside ? columns.filter(({ id }) => id !== 'supplier' && id !== 'order') : columns}
      rowKey={(row) => row.id}
      rowHref={props.hrefOf}
      tools={props.tools}
      empty={
        <EmptyState title="Nothing is on order">What comes without an order is received by its part number.</EmptyState>
      }
    />
  );
}
