import { meterWords } from '../../format/meter-words.tsx';
import { DateText, Hours } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Piece } from './times-as-of.ts';

const plain = (tenths: number | 'unknown' | null) => (typeof tenths === 'number' ? tenths / 10 : tenths);

function counts({ countsSinceNew, countsSinceOverhaul }: Piece): string {
  if (countsSinceNew && countsSinceOverhaul) return 'both';
  if (countsSinceNew) return 'since new';
  return countsSinceOverhaul ? 'since overhaul' : 'neither: before the start';
}

const columns: readonly Column<Piece>[] = [
  { id: 'from', header: 'From', value: (row) => row.from, cell: (row) => <DateText date={row.from} /> },
  { id: 'to', header: 'To', value: (row) => row.to, cell: (row) => (row.to ? <DateText date={row.to} /> : 'still on') },
  {
    id: 'where',
    header: 'Where',
    value: (row) =>
      [
        ...row.within.map(({ position, name }) => `${position} of ${name}`),
        row.aircraft?.registration ?? 'nobody reported',
      ].join(', '),
  },
  {
    id: 'meter',
    header: 'Meter',
    value: (row) =>
      row.meter ? `${meterWords[row.meter]}${row.meterNo > 1 ? ` (replaced: number ${row.meterNo})` : ''}` : 'unknown',
  },
  {
    id: 'began',
    header: 'Began at',
    value: (row) => plain(row.fromTenths),
    cell: (row) => <Hours tenths={row.fromTenths} />,
    isNumber: true,
  },
  {
    id: 'ended',
    header: 'Ended at',
    value: (row) => plain(row.toTenths),
    cell: (row) => (row.toTenths === null ? '' : <Hours tenths={row.toTenths} />),
    isNumber: true,
  },
  {
    id: 'flown',
    header: 'Flown',
    value: (row) => plain(row.flownTenths),
    cell: (row) =>
      row.flownTenths === 'unknown' ? (
        <>
          unknown, at least <Hours tenths={row.flownAtLeastTenths} />
        </>
      ) : (
        <Hours tenths={row.flownTenths} />
      ),
    isNumber: true,
  },
  { id: 'counts', header: 'Counts for', value: counts },
];

/** Every stretch of flying a total is made of. */
export function PiecesTable({ pieces }: { pieces: readonly Piece[] }) {
  return (
    <DataTable
      caption="What the times are made of"
      rows={pieces}
      columns={columns}
      rowKey={(row) => `${row.intervalId} ${row.meterNo} ${row.from} ${row.to} ${row.within[0]?.id}`}
      empty={
        <EmptyState title="It has not flown since its papers were read">
          Times are what the papers said. Report an installation when the owner tells of one.
        </EmptyState>
      }
    />
  );
}
