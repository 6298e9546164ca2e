import type { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import type { RowOf } from '../../api/pages.ts';
import { formatWhole } from '../../format/numbers.ts';
import { InstantText, Price } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';

type Step = RowOf<typeof valueOperations.partAverage>;

const words: Record<Step['kind'], string> = {
  receipt: 'received',
  'undone-receipt': 'receipt undone, or returned to the supplier',
  issue: 'to the work',
  return: 'back from the work',
  found: 'found by a count',
  lost: 'missed by a count',
  'other-in': 'came back otherwise',
  'other-out': 'left otherwise',
};
const comes: ReadonlySet<Step['kind']> = new Set(['receipt', 'return', 'found', 'other-in']);
const signed = ({ kind, quantity }: Step) => (comes.has(kind) ? quantity : -quantity);

function columnsFor(currency: string): readonly Column<Step>[] {
  const price = (of: { id: 'paid' | 'worth' | 'value' | 'average'; header: string; none: string }): Column<Step> => ({
    ...of,
    value: (row) => row[of.id],
    cell: (row) => {
      const each = row[of.id];
      return each === null ? <span className="soft">{of.none}</span> : <Price each={each} currency={currency} />;
    },
    isNumber: true,
  });
  return [
    { id: 'at', header: 'When', value: (row) => row.at, cell: (row) => <InstantText instant={row.at} /> },
    {
      id: 'lot',
      header: 'Lot',
      value: (row) => row.lotCode,
      cell: (row) => <Link href={`/lots/${row.lotId}`}>{row.lotCode}</Link>,
    },
    { id: 'kind', header: 'What', value: (row) => words[row.kind] },
    {
      id: 'quantity',
      header: 'Pieces',
      value: signed,
      cell: (row) => `${signed(row) > 0 ? '+' : '−'}${formatWhole(row.quantity)}`,
      isNumber: true,
    },
    price({ id: 'paid', header: 'Paid for each', none: 'at the average' }),
    price({ id: 'worth', header: 'Worth', none: '' }),
    { id: 'held', header: 'Then held', value: (row) => row.held, isNumber: true },
    price({ id: 'value', header: 'Worth together', none: '' }),
    price({ id: 'average', header: 'Each then', none: 'nothing held' }),
  ];
}

/** Movement by movement, newest first: what each was worth, and what each piece was worth after it. */
export function AverageTable({ part, currency, rows }: { part: string; currency: string; rows: readonly Step[] }) {
  return (
    <DataTable
      caption={`Average price of ${part}`}
      rows={rows}
      columns={columnsFor(currency)}
      rowKey={(row) => row.id}
      empty={
        <EmptyState title="Nothing of the shop’s own has come yet">The first receipt begins the average.</EmptyState>
      }
    />
  );
}
