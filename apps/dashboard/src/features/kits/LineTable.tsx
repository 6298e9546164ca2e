import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { StockBar } from '../../ui/StockBar.tsx';
import type { KitLine } from './kit-detail.ts';
import { standingMark } from './kit-words.ts';

const sources = { new: 'new', reused: 'the unit’s own', any: 'new or the unit’s own' } as const;

const columns: readonly Column<KitLine>[] = [
  {
    id: 'part',
    header: 'Part',
    value: (line) => line.part.number,
    cell: (line) => <span className="code">{line.part.number}</span>,
  },
  { id: 'description', header: 'Description', value: (line) => line.part.description },
  { id: 'position', header: 'For', value: (line) => line.position },
  {
    id: 'source',
    header: 'Taken from',
    value: ({ source, shopPays }) =>
      shopPays > 0 ? `${sources[source]}, again at the shop’s cost: a function test failed` : sources[source],
  },
  {
    id: 'quantity',
    header: 'Needs',
    value: (line) => line.quantity,
    isNumber: true,
    cell: (line) => {
      const most = quantityText(line.quantity, line.part.issueUnit);
      return line.minimum === null ? most : `${line.minimum}–${most}`;
    },
  },
  {
    id: 'tray',
    header: 'In tray',
    value: (line) => line.inTray,
    isNumber: true,
    cell: (line) => quantityText(line.inTray, line.part.issueUnit),
  },
  {
    id: 'pull',
    header: 'To pull',
    value: (line) => line.toPull,
    isNumber: true,
    cell: (line) => quantityText(line.toPull, line.part.issueUnit),
  },
  {
    id: 'bar',
    header: 'Have / on order / short',
    value: (line) => `${line.have} / ${line.onOrder} / ${line.short}`,
    cell: (line) =>
      line.have + line.onOrder + line.short === 0 ? null : (
        <StockBar have={line.have} onOrder={line.onOrder} short={line.short} label={line.part.number} />
      ),
  },
  {
    id: 'standing',
    header: 'Standing',
    value: (line) => standingMark(line).word,
    cell: (line) => <StateMark {...standingMark(line)} />,
  },
];

/** Every line of the kit list for this unit, and how it stands. */
export function LineTable(props: { kitCode: string; lines: readonly KitLine[]; hrefOf: (line: KitLine) => string }) {
  return (
    <DataTable
      caption={`Lines of ${props.kitCode}`}
      rows={props.lines}
      columns={columns}
      rowKey={(line) => line.id}
      rowHref={props.hrefOf}
      empty={<EmptyState title="This kit has no lines">The kit list of its manual revision names no parts.</EmptyState>}
    />
  );
}
