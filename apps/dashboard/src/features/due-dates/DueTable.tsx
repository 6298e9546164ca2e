import { type ReactNode, useMemo } from 'react';
import { useToday } from '../../format/use-today.ts';
import { DateText, Hours } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { DueFan, type FanScale, fanScale, fanWords } from '../../ui/pictures/DueFan.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type DueRow, leftWords } from './due.ts';

const plain: readonly Column<DueRow>[] = [
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
    header: 'Likely due',
    value: (row) => (row.dueOn === 'unknown' ? '' : row.dueOn),
    cell: (row) => (
      <>
        {row.dueOn === 'unknown' ? 'not known' : <DateText date={row.dueOn} />}
        <br />
        {row.overdue ? (
          <StateMark state="stop" word={leftWords(row)} />
        ) : (
          <span className="small soft">{leftWords(row)}</span>
        )}
      </>
    ),
  },
];

const fan = (scale: FanScale): Column<DueRow> => ({
  id: 'between',
  header: 'Likely between',
  value: (row) => (row.dueOn === 'unknown' ? '' : fanWords({ ...row, dueOn: row.dueOn })),
  cell: (row) => (row.dueOn === 'unknown' ? '' : <DueFan dates={{ ...row, dueOn: row.dueOn }} scale={scale} />),
  canSort: false,
});

const after: readonly Column<DueRow>[] = [
  {
    id: 'hours',
    header: 'Hours left',
    value: (row) => (row.hoursLeftTenths === 'unknown' ? null : row.hoursLeftTenths / 10),
    cell: (row) => <Hours tenths={row.hoursLeftTenths} />,
    isNumber: true,
  },
  {
    id: 'governs',
    header: 'What governs',
    value: (row) => row.governedWhat || row.governedBy,
    cell: (row) => (
      <>
        {row.governedWhat || row.governedBy}
        <br />
        <span className="small soft">{row.requirement ?? 'not said to be required or recommended'}</span>
      </>
    ),
  },
];

interface DueTableProps {
  rows: readonly DueRow[];
  tools?: ReactNode;
  /** Says which rows these are. */
  caption?: string;
  /** The scale of a longer list these rows are part of. */
  scale?: FanScale;
}

/** Units out there by when they come due, overdue first, each with the fan of its likely dates and what governs. */
export function DueTable({ rows, tools, caption = 'Coming due', scale }: DueTableProps) {
  const today = useToday();
  const columns = useMemo(() => {
    const dated = rows.flatMap((row) => (row.dueOn === 'unknown' ? [] : [{ ...row, dueOn: row.dueOn }]));
    return [...plain, fan(scale ?? fanScale(dated, today)), ...after];
  }, [rows, scale, today]);
  return (
    <DataTable
      caption={caption}
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
