import type { ReactNode } from 'react';
import { countOf } from '../../format/numbers.ts';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';
import type { Expiring } from './lots.ts';

function lifeMark(row: Expiring): { state: State; word: string } {
  if (row.daysLeft <= 0) return { state: 'stop', word: 'expired' };
  return { state: row.daysLeft <= 30 ? 'waiting' : 'note', word: `${countOf(row.daysLeft, 'day')} left` };
}

const columns: readonly Column<Expiring>[] = [
  {
    id: 'lot',
    header: 'Lot',
    value: (row) => row.lot.code,
    cell: (row) => <span className="code">{row.lot.code}</span>,
  },
  {
    id: 'part',
    header: 'Part',
    value: (row) => `${row.part.number} ${row.part.description}`,
    cell: (row) => (
      <>
        <span className="code">{row.part.number}</span> <span className="soft">{row.part.description}</span>
      </>
    ),
  },
  {
    id: 'left',
    header: 'Life left',
    value: (row) => row.daysLeft,
    cell: (row) => <StateMark {...lifeMark(row)} />,
  },
  {
    id: 'expires',
    header: 'First day of no use',
    value: (row) => row.expiresOn,
    cell: (row) => <DateText date={row.expiresOn} />,
  },
  { id: 'place', header: 'Where', value: (row) => row.place },
  { id: 'onHand', header: 'There', value: (row) => row.onHand, isNumber: true },
  { id: 'reserved', header: 'Promised', value: (row) => row.reserved, isNumber: true },
  {
    id: 'kits',
    header: 'Kits that count on it',
    value: (row) => row.kits.join(', '),
    cell: (row) => row.kits.join(', ') || <span className="soft">none</span>,
  },
];

/** Stock that is expired or will be soon, soonest first, with the kits that count on it. */
export function ExpiringTable({ rows, tools }: { rows: readonly Expiring[]; tools: ReactNode }) {
  return (
    <DataTable
      caption="Expiring stock"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.lot.id}
      rowHref={(row) => `/lots/${row.lot.id}`}
      tools={tools}
      empty={<EmptyState title="Nothing expires in that time">Look further ahead to see what comes next.</EmptyState>}
    />
  );
}
