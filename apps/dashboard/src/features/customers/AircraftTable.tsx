import type { ReactNode } from 'react';
import { figureOf, figureText, MeterFigure, meterWords } from '../../format/meter-words.tsx';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { Aircraft } from './customers.ts';

function Readings({ aircraft }: { aircraft: Aircraft }) {
  if (aircraft.latestReadings.length === 0) return <span className="soft">never read</span>;
  return (
    <ul style={{ listStyle: 'none' }}>
      {aircraft.latestReadings.map((reading) => (
        <li key={reading.meter}>
          {meterWords[reading.meter]} <MeterFigure meter={reading.meter} figure={figureOf(reading)} />,{' '}
          <DateText date={reading.readOn} />
        </li>
      ))}
    </ul>
  );
}

interface Doing {
  readonly onRead: ((aircraft: Aircraft) => void) | undefined;
  readonly onMeters: (aircraft: Aircraft) => void;
  readonly onMove: ((aircraft: Aircraft) => void) | undefined;
}

const facts: readonly Column<Aircraft>[] = [
  {
    id: 'registration',
    header: 'Registration',
    value: (row) => row.registration,
    cell: (row) => <span className="code">{row.registration}</span>,
  },
  { id: 'airframe', header: 'Airframe', value: (row) => row.airframe },
  { id: 'engine', header: 'Engine', value: (row) => row.engine },
  {
    id: 'readings',
    header: 'Latest readings',
    value: (row) =>
      row.latestReadings
        .map((each) => `${meterWords[each.meter]} ${figureText(each.meter, figureOf(each))} on ${each.readOn}`)
        .join('; '),
    cell: (row) => <Readings aircraft={row} />,
    canSort: false,
  },
];

/** A column with one button a row; what is not seen of its words is heard. */
function acting(
  named: { id: string; header: string; word: string; heard: (row: Aircraft) => string },
  on: ((aircraft: Aircraft) => void) | undefined,
): readonly Column<Aircraft>[] {
  if (!on) return [];
  const { id, header, word, heard } = named;
  return [
    {
      ...{ id, header, value: () => '', canSort: false },
      cell: (row) => (
        <Button onPress={() => on(row)}>
          {word}
          <span className="only-heard"> {heard(row)}</span>
        </Button>
      ),
    },
  ];
}

function columnsWith({ onRead, onMeters, onMove }: Doing): readonly Column<Aircraft>[] {
  return [
    ...facts,
    ...acting(
      { id: 'meters', header: 'Its meters', word: 'Look', heard: (row) => `at the meters of ${row.registration}` },
      onMeters,
    ),
    ...acting(
      { id: 'read', header: 'New reading', word: 'Record', heard: (row) => `a reading of ${row.registration}` },
      onRead,
    ),
    ...acting(
      { id: 'move', header: 'Owner', word: 'Move', heard: (row) => `${row.registration} to another customer` },
      onMove,
    ),
  ];
}

/** Aircraft of a customer, with the latest reading of each meter. */
export function AircraftTable(props: Doing & { aircraft: readonly Aircraft[]; tools: ReactNode }) {
  return (
    <DataTable
      caption="Aircraft"
      rows={props.aircraft}
      columns={columnsWith(props)}
      rowKey={(row) => row.id}
      tools={props.tools}
      empty={
        <EmptyState title="No aircraft yet">Add one, so that its readings tell when its units come due.</EmptyState>
      }
    />
  );
}
