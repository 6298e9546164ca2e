import type { ReactNode } from 'react';
import { DateText, Hours } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type DueRow, leftWords } from './due.ts';

const columns: readonly Column<DueRow>[] = [
  {
    id: 'unit',
    header: 'Unit',
    value: (row) => `${row.unit.designation} ${row.unit.serial}`,
    cell: (row) => (
      <>
        {row.unit.designation} <span className="code">{row.unit.serial}</span>
      </>
    ),
  },
  {
    id: 'customer',
    header: 'Customer',
    value: (row) => row.customer.name,
    cell: (row) => <Link href={`/customers/${row.customer.id}`}>{row.customer.name}</Link>,
  },
  { id: 'aircraft', header: 'Aircraft', value: (row) => row.registration ?? '' },
  {
    id: 'due',
    header: 'Due',
    value: (row) => (row.dueOn === 'unknown' ? '' : row.dueOn),
    cell: (row) => (row.dueOn === 'unknown' ? 'not known' : <DateText date={row.dueOn} />),
  },
  {
    id: 'left',
    header: 'How far off',
    value: (row) => (row.daysLeft === 'unknown' ? null : row.daysLeft),
    cell: (row) =>
      row.overdue ? (
        <StateMark state="stop" word={leftWords(row)} />
      ) : (
        <span className="quantity">{leftWords(row)}</span>
      ),
  },
  {
    id: 'hours',
    header: 'Hours left',
    value: (row) => (row.hoursLeftTenths === 'unknown' ? null : row.hoursLeftTenths / 10),
    cell: (row) => <Hours tenths={row.hoursLeftTenths} />,
    isNumber: true,
  },
  { id: 'governs', header: 'Governed by', value: (row) => (row.governedBy === 'none' ? 'nothing' : row.governedBy) },
  { id: 'requirement', header: 'The interval is', value: (row) => row.requirement ?? 'not said' },
  { id: 'basis', header: 'Reckoned from', value: (row) => row.basis, canSort: false },
];

/** Units out there by when they come due, overdue first; each says what governs and from which readings. */
export function DueTable({ rows, tools }: { rows: readonly DueRow[]; tools?: ReactNode }) {
  return (
    <DataTable
      caption="Coming due"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.unit.id}
      rowHref={(row) => `/units/${row.unit.id}`}
      tools={tools}
      empty={
        <EmptyState title="No unit comes due in this time">
          Units appear once the shop has released them; readings of their aircraft say when.
        </EmptyState>
      }
    />
  );
}
