import { plainDates } from '../../format/plain-dates.ts';
import { DateText, DueText, Price, Quantity } from '../../format/values.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { type Suggestion, whoAsks } from './suggestions.ts';
import { WhyList } from './WhyList.tsx';

export interface SuggestionTableProps {
  caption: string;
  rows: readonly Suggestion[];
  chosen: ReadonlySet<string>;
  /** Absent for those who may not order. */
  onChoose?: ((partId: string, isChosen: boolean) => void) | undefined;
}

function Part({ row }: { row: Suggestion }) {
  return (
    <>
      <span className="code">{row.part.number}</span> <span className="small soft">{row.part.description}</span>
    </>
  );
}

function Why({ row }: { row: Suggestion }) {
  return (
    <div className="small">
      <p>
        {whoAsks(row)}
        {row.quantity > row.need ? `; ${row.need} needed` : ''}
      </p>
      <details>
        <summary>Why {row.quantity}?</summary>
        <WhyList steps={row.because} />
        {row.later.map(({ orderBy, quantity }) => (
          <p key={orderBy}>
            Later: {quantity}, to be ordered by <DateText date={orderBy} />.
          </p>
        ))}
        {row.others.map(({ supplier, sentence }) => (
          <p key={supplier.id}>
            {supplier.name}: {plainDates(sentence)}
          </p>
        ))}
      </details>
    </div>
  );
}

const what: readonly Column<Suggestion>[] = [
  {
    id: 'quantity',
    header: 'Buy',
    value: (row) => row.quantity,
    isNumber: true,
    cell: (row) => <Quantity amount={row.quantity} unit={row.part.issueUnit} />,
  },
  {
    id: 'order-by',
    header: 'Order by',
    value: (row) => row.orderBy,
    cell: (row) => <DueText date={row.orderBy} />,
  },
  {
    id: 'arrives',
    header: 'Here if ordered now',
    value: (row) => row.arrives,
    cell: (row) => <DateText date={row.arrives} />,
  },
  {
    id: 'why',
    header: 'Why',
    value: (row) => row.because.map(({ sentence }) => sentence).join(' '),
    canSort: false,
    cell: (row) => <Why row={row} />,
  },
  {
    id: 'each',
    header: 'Each',
    value: (row) => Number(row.unitPrice),
    isNumber: true,
    cell: (row) => <Price each={row.unitPrice} />,
  },
  {
    id: 'cost',
    header: 'In all',
    value: (row) => row.cost,
    isNumber: true,
    cell: (row) => <Price each={String(row.cost)} />,
  },
];

function columns({ chosen, onChoose }: SuggestionTableProps): readonly Column<Suggestion>[] {
  const part: Column<Suggestion> = {
    id: 'part',
    header: 'Part',
    value: (row) => row.part.number,
    cell: (row) =>
      onChoose ? (
        <Checkbox isSelected={chosen.has(row.part.id)} onChange={(is) => onChoose(row.part.id, is)}>
          <Part row={row} />
        </Checkbox>
      ) : (
        <Part row={row} />
      ),
  };
  return [part, ...what];
}

/** What to buy from one supplier, the first order-by date first. */
export function SuggestionTable(props: SuggestionTableProps) {
  const { caption, rows } = props;
  return (
    <DataTable caption={caption} rows={rows} columns={columns(props)} rowKey={(row) => row.part.id} empty={null} />
  );
}
