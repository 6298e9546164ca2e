import { Amount } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { lineWords, type QuoteLine } from './quotes.ts';

function columnsIn(currency: string): readonly Column<QuoteLine>[] {
  return [
    { id: 'kind', header: 'What for', value: (line) => lineWords[line.kind] },
    { id: 'description', header: 'Line', value: (line) => line.description },
    { id: 'quantity', header: 'Quantity', value: (line) => line.quantity, isNumber: true },
    {
      id: 'price',
      header: 'Each',
      value: (line) => (line.unitPrice === '' ? null : Number(line.unitPrice)),
      cell: (line) => line.unitPrice,
      isNumber: true,
    },
    {
      id: 'amount',
      header: 'Amount',
      value: (line) => line.amountMinor / 100,
      cell: (line) => <Amount minor={line.amountMinor} currency={currency} />,
      isNumber: true,
    },
    { id: 'tax', header: 'Tax', value: (line) => (line.taxable ? 'taxed' : 'not taxed') },
  ];
}

interface Priced {
  readonly currency: string;
  readonly lines: readonly QuoteLine[];
  readonly subtotalMinor: number;
  readonly taxPercent: string;
  readonly taxMinor: number;
  readonly totalMinor: number;
}

/** Lines, tax and total, as they will stand on the printed quote. */
export function LineTable({ of, caption }: { of: Priced; caption: string }) {
  return (
    <div className="stack tight">
      <DataTable
        caption={caption}
        rows={of.lines}
        columns={columnsIn(of.currency)}
        rowKey={(line) => String(line.sequence)}
        empty={null}
      />
      <p className="row between">
        <span className="soft">
          Before tax <Amount minor={of.subtotalMinor} currency={of.currency} />, tax {of.taxPercent} %{' '}
          <Amount minor={of.taxMinor} currency={of.currency} />
        </span>
        <span className="figure">
          <Amount minor={of.totalMinor} currency={of.currency} />
        </span>
      </p>
    </div>
  );
}
