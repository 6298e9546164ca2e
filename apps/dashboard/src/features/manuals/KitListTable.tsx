import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { type RevisionModel, scopesInWords } from './manuals.ts';

type Line = RevisionModel['kitList'][number];

function amountWords({ minimum, quantity }: Line): string {
  return minimum === undefined || minimum === quantity ? String(quantity) : `${minimum} to ${quantity}`;
}

function serialWords({ serialFrom, serialTo }: Line): string {
  if (serialFrom && serialTo) return `${serialFrom} to ${serialTo}`;
  if (serialFrom) return `from ${serialFrom}`;
  return serialTo ? `up to ${serialTo}` : '';
}

const sourceWords: Record<Line['source'], string> = { new: 'always new', reused: 'reused', any: 'either' };

const columns: readonly Column<Line>[] = [
  { id: 'position', header: 'Position', value: (line) => line.position },
  { id: 'part', header: 'Part', value: (line) => line.part, cell: (line) => <span className="code">{line.part}</span> },
  { id: 'description', header: 'Description', value: (line) => line.description },
  {
    id: 'quantity',
    header: 'Pieces',
    value: (line) => line.quantity,
    cell: (line) => <span className="quantity">{amountWords(line)}</span>,
    isNumber: true,
  },
  { id: 'per', header: 'Per', value: (line) => line.per },
  {
    id: 'source',
    header: 'Source',
    value: (line) => sourceWords[line.source],
    cell: (line) => <span className="quantity">{sourceWords[line.source]}</span>,
  },
  { id: 'scopes', header: 'For', value: (line) => scopesInWords(line.scopes) },
  { id: 'serials', header: 'Serials', value: serialWords },
];

/** What belongs at each position, for which scopes and serials. */
export function KitListTable({ designation, lines }: { designation: string; lines: readonly Line[] }) {
  return (
    <DataTable
      caption={`Kit list of ${designation}`}
      rows={lines}
      columns={lines.some(serialWords) ? columns : columns.filter(({ id }) => id !== 'serials')}
      rowKey={(line) => line.id}
      empty={<EmptyState title="This revision lists no parts for this model" />}
    />
  );
}
