import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { Expected, OrderBy, Why } from './shortage-cells.tsx';
import type { Shortage } from './shortages.ts';

export interface ShortageTableProps {
  rows: readonly Shortage[];
  chosen: ReadonlySet<string>;
  onChoose: (partId: string, isChosen: boolean) => void;
  /** Orders this one part; absent for those who may not. */
  onOrder?: ((row: Shortage) => void) | undefined;
  tools: ReactNode;
}

/** What is missing leads to the part it is of. */
function Missing({ row }: { row: Shortage }) {
  const mark =
    row.short > 0 ? (
      <StateMark state="short" word={String(row.short)} />
    ) : row.late > 0 ? (
      <StateMark state="waiting" word={`${row.late} late`} />
    ) : null;
  return mark ? <Link href={`/parts/${row.part.id}`}>{mark}</Link> : null;
}

const what: readonly Column<Shortage>[] = [
  {
    id: 'short',
    header: 'Short',
    value: (row) => row.short,
    isNumber: true,
    cell: (row) => (
      <>
        {row.kitLines === 0 ? <span className="soft">no kit</span> : <Missing row={row} />}
        {row.likelyShort > 0 ? (
          <p className="small soft">
            {row.likelyShort} for work not approved yet, {row.likelyWeighed} by its odds
          </p>
        ) : null}
      </>
    ),
  },
  {
    id: 'expected',
    header: 'Expected beside',
    value: (row) => row.expected?.short ?? 0,
    isNumber: true,
    cell: (row) => <Expected row={row} />,
  },
  {
    id: 'need',
    header: 'First needed',
    value: (row) => row.firstNeed,
    cell: (row) => <DateText date={row.firstNeed} />,
  },
  {
    id: 'order-by',
    header: 'Order by',
    value: (row) => row.orderBy,
    cell: (row) => <OrderBy row={row} />,
  },
  {
    id: 'why',
    header: 'Why',
    value: (row) => [...row.sentences, ...(row.expected?.sentences ?? [])].join(' '),
    canSort: false,
    cell: (row) => <Why row={row} />,
  },
  { id: 'supplier', header: 'Supplier', value: (row) => row.supplier?.name ?? 'none named' },
];

function partColumn({ chosen, onChoose, onOrder }: ShortageTableProps): Column<Shortage> {
  return {
    id: 'part',
    header: 'Part',
    value: (row) => row.part.number,
    cell: (row) =>
      // What is only expected is bought from the reasons to buy, where odds and packs are weighed.
      onOrder && row.suggested > 0 ? (
        <Checkbox isSelected={chosen.has(row.part.id)} onChange={(is) => onChoose(row.part.id, is)}>
          <span className="code">{row.part.number}</span>
          <span className="small soft"> {row.part.description}</span>
        </Checkbox>
      ) : (
        <>
          <span className="code">{row.part.number}</span>
          <span className="small soft"> {row.part.description}</span>
        </>
      ),
  };
}

function orderColumn(onOrder: (row: Shortage) => void): Column<Shortage> {
  return {
    id: 'order',
    header: 'Suggested',
    value: (row) => row.suggested,
    cell: (row) =>
      row.suggested > 0 ? (
        <Button onPress={() => onOrder(row)} aria-label={`Order ${row.suggested} ${row.part.number}`}>
          Order {row.suggested}
        </Button>
      ) : null,
  };
}

function columns(props: ShortageTableProps): readonly Column<Shortage>[] {
  return [partColumn(props), ...what, ...(props.onOrder ? [orderColumn(props.onOrder)] : [])];
}

/** Parts that open kits are short of or get late, the first order-by date first. */
export function ShortageTable(props: ShortageTableProps) {
  return (
    <DataTable
      caption="Shortages"
      rows={props.rows}
      columns={columns(props)}
      rowKey={(row) => row.part.id}
      tools={props.tools}
      empty={<EmptyState title="No open kit is short of anything">What is on order comes in time.</EmptyState>}
    />
  );
}
