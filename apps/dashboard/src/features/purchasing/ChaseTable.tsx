import { chaseCauseTitles } from '@hubwright/contracts/purchasing/order-operations';
import type { ReactNode } from 'react';
import { plainDates } from '../../format/plain-dates.ts';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Chase } from './chase.ts';

const words = ({ causes }: Chase) => causes.map((cause) => chaseCauseTitles[cause]).join(', ');

const columns: readonly Column<Chase>[] = [
  {
    id: 'order',
    header: 'Order',
    value: (row) => row.order.number,
    cell: (row) => <span className="code">{row.order.number}</span>,
  },
  {
    id: 'why',
    header: 'Why',
    value: (row) => row.sentence,
    canSort: false,
    cell: (row) => (
      <div className="stack tight">
        <StateMark state={row.causes[0] === 'late' || row.kits.length > 0 ? 'stop' : 'waiting'} word={words(row)} />
        <span className="small">{plainDates(row.sentence)}</span>
      </div>
    ),
  },
  {
    id: 'kits',
    header: 'Holds up',
    value: (row) => row.kits.map(({ kitCode }) => kitCode).join(', '),
    cell: (row) =>
      row.kits.length === 0 ? (
        <span className="soft">no kit</span>
      ) : (
        <span className="row tight">
          {row.kits.slice(0, 4).map((kit) => (
            <Link key={kit.kitId} href={`/kits/${kit.kitId}`}>
              {kit.kitCode}
            </Link>
          ))}
          {row.kits.length > 4 ? <span className="soft">and {row.kits.length - 4} more</span> : null}
        </span>
      ),
  },
  {
    id: 'comes',
    header: 'Comes',
    value: (row) => row.confirmedOn ?? row.askedFor,
    cell: (row) => <DateText date={row.confirmedOn ?? row.askedFor} />,
  },
  {
    id: 'supplier',
    header: 'Ask',
    value: (row) => row.supplier.name,
    cell: (row) => (
      <span>
        {row.supplier.name}
        <span className="small soft">
          {' '}
          {row.supplier.phone} {row.supplier.email}
        </span>
      </span>
    ),
  },
];

/** Whom to ring today, what holds up a kit first. */
export function ChaseTable({ rows, tools }: { rows: readonly Chase[]; tools: ReactNode }) {
  return (
    <DataTable
      caption="Orders to chase"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.lineId}
      rowHref={(row) => `/orders/${row.order.id}`}
      tools={tools}
      empty={<EmptyState title="Nobody has to be rung">Every open line is sent, confirmed and in time.</EmptyState>}
    />
  );
}
