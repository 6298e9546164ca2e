import { useSuspenseQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { meterWords } from '../../format/meter-words.tsx';
import { DateText, Hours, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { type Interval, intervalsQuery } from './times-as-of.ts';

type On = (row: Interval) => void;

const figure = (day: string | null, tenths: number | 'unknown' | null, cycles: string) =>
  day === null ? 'still on' : `${day} at ${typeof tenths === 'number' ? `${tenths / 10} h` : 'unknown'}${cycles}`;

/** What its meter of cycles showed at that end, where one was named. */
function cyclesAt({ cycles }: Interval, end: 'from' | 'to'): string {
  return cycles && cycles[end] !== null ? `, ${cycles[end]} ${cycles.meter}` : '';
}

function When({ day, tenths, cycles }: { day: string | null; tenths: number | 'unknown' | null; cycles: string }) {
  if (day === null) return 'still on';
  return (
    <>
      <DateText date={day} /> at <Hours tenths={tenths ?? 'unknown'} />
      {cycles}
    </>
  );
}

const plainColumns: readonly Column<Interval>[] = [
  { id: 'aircraft', header: 'Aircraft', value: (row) => `${row.aircraft.registration}, ${row.position}` },
  { id: 'meter', header: 'Meter', value: (row) => meterWords[row.meter] },
  {
    id: 'from',
    header: 'Installed',
    value: (row) => figure(row.from, row.fromTenths, cyclesAt(row, 'from')),
    cell: (row) => <When day={row.from} tenths={row.fromTenths} cycles={cyclesAt(row, 'from')} />,
  },
  {
    id: 'to',
    header: 'Removed',
    value: (row) => figure(row.to, row.toTenths, cyclesAt(row, 'to')),
    cell: (row) => <When day={row.to} tenths={row.toTenths} cycles={cyclesAt(row, 'to')} />,
  },
  { id: 'state', header: 'On record', value: (row) => row.state },
  { id: 'basis', header: 'From whom, or why', value: (row) => row.basis },
  {
    id: 'by',
    header: 'Recorded',
    value: (row) => `${row.recordedBy} ${row.recordedAt}`,
    cell: (row) => (
      <>
        {row.recordedBy}, <InstantText instant={row.recordedAt} />
      </>
    ),
  },
];

interface Acting {
  readonly removed: On;
  readonly corrected: On;
  readonly withdrawn: On;
}

function Actions({ row, on }: { row: Interval; on: Acting }) {
  if (row.state !== 'stands') return null;
  return (
    <div className="row">
      {row.to === null ? <Button onPress={() => on.removed(row)}>Removed</Button> : null}
      <Button onPress={() => on.corrected(row)}>Correct</Button>
      <Button onPress={() => on.withdrawn(row)}>Withdraw</Button>
    </div>
  );
}

/** Installations on aircraft as recorded, with what was superseded. */
export function IntervalTable(props: { itemId: string; on: Acting | undefined; tools: ReactNode }) {
  const { rows } = useSuspenseQuery(intervalsQuery(props.itemId)).data;
  const { on } = props;
  const acting: readonly Column<Interval>[] = on
    ? [{ id: 'do', header: 'Do', value: () => '', cell: (row) => <Actions row={row} on={on} />, canSort: false }]
    : [];
  return (
    <DataTable
      caption="Installations on aircraft"
      rows={rows}
      columns={[...plainColumns, ...acting]}
      rowKey={(row) => row.id}
      tools={props.tools}
      empty={
        <EmptyState title="No installation is on record">
          Ask the owner on which aircraft it is, since when, and what the meter showed.
        </EmptyState>
      }
    />
  );
}
