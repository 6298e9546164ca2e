import { dimensionTitles } from '@hubwright/contracts/manuals/words';
import type { MeasuredPart } from '@hubwright/contracts/work-orders/dimension-operations';
import { formatDate } from '../../format/dates.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Trend } from '../../ui/pictures/Trend.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

type Row = MeasuredPart['rows'][number];

export function placeOf({ station, zone }: Pick<Row, 'station' | 'zone'>): string {
  if (zone) return zone;
  return station === null ? '' : String(Number(station));
}

function limitOf({ low, high, unit, basis }: Row): string {
  if (low !== null && high !== null) return `${low} to ${high} ${unit}`;
  if (low !== null) return `at least ${low} ${unit}`;
  return high === null ? (basis ?? 'by a chart') : `at most ${high} ${unit}`;
}

function Read({ of }: { of: Row['asFound'] }) {
  if (!of)
    return (
      <span className="soft">
        –<span className="only-heard"> not measured</span>
      </span>
    );
  return (
    <span className="row tight">
      <span className="quantity">{of.value}</span>
      {of.pass ? null : <StateMark state="stop" word="outside" />}
    </span>
  );
}

/** The past and now of one dimension against its limit, in numbers and as a line. */
function Past({ row }: { row: Row }) {
  const now = row.afterRepair ?? row.asFound;
  const points = [
    ...row.past.map(({ on, workOrderNumber, value }) => ({ label: `${formatDate(on)}, ${workOrderNumber}`, value })),
    ...(now ? [{ label: 'this visit', value: now.value }] : []),
  ];
  if (row.past.length === 0) return <span className="soft">first visit</span>;
  return <Trend title={row.name} points={points} low={row.low} high={row.high} unit={row.unit} />;
}

const columns: readonly Column<Row>[] = [
  { id: 'dimension', header: 'Dimension', value: (row) => dimensionTitles[row.dimension] },
  { id: 'place', header: 'Station or zone', value: placeOf },
  {
    id: 'limit',
    header: 'Limit',
    value: limitOf,
    cell: (row) => (
      <>
        {limitOf(row)}
        {row.basis && row.low !== null ? <span className="soft small"> for {row.basis}</span> : null}
      </>
    ),
  },
  {
    id: 'found',
    header: 'As found',
    value: (row) => row.asFound?.value ?? '',
    cell: (row) => <Read of={row.asFound} />,
  },
  {
    id: 'after',
    header: 'After repair',
    value: (row) => row.afterRepair?.value ?? '',
    cell: (row) => <Read of={row.afterRepair} />,
  },
  { id: 'removed', header: 'Taken off', value: (row) => row.removed ?? '', isNumber: true },
  {
    id: 'past',
    header: 'Earlier visits',
    value: (row) => row.past.map(({ value }) => value).join(' → '),
    cell: (row) => <Past row={row} />,
  },
  {
    id: 'left',
    header: 'Overhauls left, estimate',
    value: (row) => row.remaining?.overhauls ?? '',
    cell: (row) =>
      row.remaining ? (
        <>
          {row.remaining.overhauls}
          {row.past.length > 0 ? <span className="soft small"> {row.remaining.basis}</span> : null}
        </>
      ) : (
        <span className="soft">–</span>
      ),
  },
];

/** Every dimension of one part: limit, before, after, what went off, where it comes from and how long it lasts. */
export function DimensionTable({ part }: { part: MeasuredPart }) {
  return (
    <DataTable
      caption={`Dimensions of ${part.position} ${part.serial}`}
      rows={part.rows}
      columns={columns}
      rowKey={(row) => `${row.dimension} ${row.station} ${row.zone} ${row.name}`}
      empty={<EmptyState title="Nothing is measured on this part">Its route has no dimension.</EmptyState>}
    />
  );
}
