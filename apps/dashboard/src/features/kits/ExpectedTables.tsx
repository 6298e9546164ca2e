import { DateText, DueText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import {
  type Behind,
  type ExpectedDemand,
  type ExpectedMonth,
  expectationText,
  percentText,
} from './expected-demand.ts';

const whose = { due: 'the list of units due', finding: 'findings' } as const;

const monthColumns: readonly Column<ExpectedMonth>[] = [
  { id: 'month', header: 'Month', value: (row) => row.month },
  { id: 'kind', header: 'For', value: (row) => whose[row.kind] },
  {
    id: 'quantity',
    header: 'Expected',
    value: (row) => Number(expectationText(row.quantity)),
    isNumber: true,
    cell: (row) => expectationText(row.quantity),
  },
  { id: 'pieces', header: 'Planned', value: (row) => row.pieces, isNumber: true },
  {
    id: 'short',
    header: 'Not covered',
    value: (row) => row.short,
    isNumber: true,
    cell: (row) => (row.short > 0 ? <StateMark state="waiting" word={String(row.short)} /> : '0'),
  },
  { id: 'need', header: 'Needed by', value: (row) => row.needBy, cell: (row) => <DateText date={row.needBy} /> },
  {
    id: 'order-by',
    header: 'Order by',
    value: (row) => row.orderBy,
    cell: (row) => (row.orderBy ? <DueText date={row.orderBy} /> : <span className="soft">nothing to order</span>),
  },
];

/** Month by month: what is expected, what is planned for it and what of that nothing covers. */
export function ExpectedMonths({ of }: { of: ExpectedDemand }) {
  return (
    <DataTable
      caption={`Expected of ${of.part.number} by month`}
      rows={of.months}
      columns={monthColumns}
      rowKey={(row) => row.month + row.kind}
      empty={<EmptyState title="Nothing is expected">{of.summary}</EmptyState>}
    />
  );
}

const behindColumns: readonly Column<Behind>[] = [
  {
    id: 'unit',
    header: 'Unit',
    value: (row) => (row.unit ? `${row.unit.designation} ${row.unit.serial}` : (row.workOrder?.unit ?? '')),
    cell: ({ unit, workOrder }) =>
      unit ? (
        <Link href={`/units/${unit.id}`}>
          {unit.designation} {unit.serial}
        </Link>
      ) : (
        <>
          {workOrder?.unit}, <Link href={`/work-orders/${workOrder?.id}`}>{workOrder?.number}</Link>
        </>
      ),
  },
  { id: 'customer', header: 'Customer', value: (row) => row.unit?.customer ?? row.workOrder?.customer ?? '' },
  {
    id: 'due',
    header: 'When',
    value: (row) => row.unit?.dueOn ?? '',
    cell: ({ unit }) =>
      unit ? (
        <>
          due <DateText date={unit.dueOn} /> <span className="small soft">{unit.why}</span>
        </>
      ) : (
        'in the house, not looked into yet'
      ),
  },
  { id: 'kind', header: 'By', value: (row) => (row.kind === 'due' ? 'its list' : 'a finding') },
  {
    id: 'probability',
    header: 'How likely',
    value: (row) => Math.round(row.probability * 100),
    isNumber: true,
    cell: (row) => percentText(row.probability),
  },
  { id: 'each', header: 'Then', value: (row) => row.each, isNumber: true, cell: (row) => expectationText(row.each) },
  {
    id: 'quantity',
    header: 'Counts as',
    value: (row) => row.quantity,
    isNumber: true,
    cell: (row) => expectationText(row.quantity),
  },
];

/** Unit by unit: each with its odds. Together they are what is expected. */
export function ExpectedUnits({ part, rows }: { part: { number: string }; rows: readonly Behind[] }) {
  return (
    <DataTable
      caption={`Units behind what is expected of ${part.number}`}
      rows={rows}
      columns={behindColumns}
      rowKey={(row) => row.kind + (row.unit?.id ?? row.workOrder?.id ?? '')}
      empty={
        <EmptyState title="No unit stands behind it">
          Units that come due show here once their due dates are known.
        </EmptyState>
      }
    />
  );
}
