import type { ReactNode } from 'react';
import { countOf } from '../../format/numbers.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { DateText, DueText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Shortage } from './shortages.ts';

export interface ShortageTableProps {
  rows: readonly Shortage[];
  chosen: ReadonlySet<string>;
  onChoose: (partId: string, isChosen: boolean) => void;
  /** Orders this one part; absent for those who may not. */
  onOrder?: ((row: Shortage) => void) | undefined;
  tools: ReactNode;
}

/** One sentence; the kit it names leads to the line that waits. */
function Sentence({ row, at }: { row: Shortage; at: number }) {
  const sentence = plainDates(row.sentences[at] ?? '');
  const kit = row.kits[at];
  const place = kit ? sentence.indexOf(kit.kitCode) : -1;
  if (!kit || place < 0) return <p>{sentence}</p>;
  return (
    <p>
      {sentence.slice(0, place)}
      <Link href={`/kits/${kit.kitId}?sheet=lines&line=${kit.lineId}`}>{kit.kitCode}</Link>
      {sentence.slice(place + kit.kitCode.length)}
    </p>
  );
}

function Why({ row }: { row: Shortage }) {
  const more = row.sentences.length - 1;
  return (
    <div className="small">
      <Sentence row={row} at={0} />
      {more > 0 ? (
        <details>
          <summary className="soft">and {countOf(more, 'more kit line')}</summary>
          {row.sentences.slice(1).map((sentence, at) => (
            <Sentence key={sentence} row={row} at={at + 1} />
          ))}
        </details>
      ) : null}
    </div>
  );
}

const what: readonly Column<Shortage>[] = [
  {
    id: 'short',
    header: 'Short',
    value: (row) => row.short,
    isNumber: true,
    cell: (row) => (
      <>
        <Link href={`/parts/${row.part.id}`}>
          {row.short > 0 ? (
            <StateMark state="short" word={String(row.short)} />
          ) : (
            <StateMark state="waiting" word={`${row.late} late`} />
          )}
        </Link>
        {row.likelyShort > 0 ? (
          <p className="small soft">
            {row.likelyShort} for work not approved yet, {row.likelyWeighed} by its odds
          </p>
        ) : null}
      </>
    ),
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
    cell: (row) => (row.orderBy ? <DueText date={row.orderBy} /> : <span className="soft">is on order</span>),
  },
  {
    id: 'why',
    header: 'Why',
    value: (row) => row.sentences.join(' '),
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
      onOrder ? (
        <Checkbox isSelected={chosen.has(row.part.id)} onChange={(is) => onChoose(row.part.id, is)}>
          <span className="code">{row.part.number}</span>
          <span className="small soft"> {row.part.description}</span>
        </Checkbox>
      ) : (
        <span className="code">{row.part.number}</span>
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
