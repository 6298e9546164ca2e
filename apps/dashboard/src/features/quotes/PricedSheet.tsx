import { countOf } from '../../format/numbers.ts';
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
  readonly taxPercent: string;
  readonly taxMinor: number;
  readonly totalMinor: number;
}

/** What each kind of line adds up to, in the order the kinds first stand. */
function sums(lines: readonly QuoteLine[]): { kind: QuoteLine['kind']; count: number; minor: number }[] {
  const found = new Map<QuoteLine['kind'], { count: number; minor: number }>();
  for (const { kind, amountMinor } of lines) {
    const sum = found.get(kind) ?? { count: 0, minor: 0 };
    found.set(kind, { count: sum.count + 1, minor: sum.minor + amountMinor });
  }
  return [...found].map(([kind, sum]) => ({ kind, ...sum }));
}

/** The total and what it is made of at a glance; every line, as it will be printed, below. */
export function PricedSheet({ of, caption }: { of: Priced; caption: string }) {
  const amount = (minor: number) => <Amount minor={minor} currency={of.currency} />;
  return (
    <div className="stack tight">
      <ul className="lines">
        {sums(of.lines).map(({ kind, count, minor }) => (
          <li key={kind}>
            <span>
              {lineWords[kind]} <span className="soft small">{countOf(count, 'line')}</span>
            </span>
            {amount(minor)}
          </li>
        ))}
        <li>
          <span>Tax {of.taxPercent} %</span>
          {amount(of.taxMinor)}
        </li>
        <li>
          <strong>Total</strong>
          <span className="figure">{amount(of.totalMinor)}</span>
        </li>
      </ul>
      <details>
        <summary>Every line ({of.lines.length})</summary>
        <DataTable
          caption={caption}
          rows={of.lines}
          columns={columnsIn(of.currency)}
          rowKey={(line) => String(line.sequence)}
          empty={null}
        />
      </details>
    </div>
  );
}
