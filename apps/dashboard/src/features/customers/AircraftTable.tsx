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

function columnsWith({ onRead, onMeters, onMove }: Doing): readonly Column<Aircraft>[] {
  return [
    ...facts,
    {
      id: 'meters',
      header: 'Its meters',
      value: () => '',
      cell: (row) => (
        <Button onPress={() => onMeters(row)}>
          Look<span className="only-heard"> at the meters of {row.registration}</span>
        </Button>
      ),
      canSort: false,
    },
    ...(onRead
      ? [
          {
            id: 'read',
            header: 'New reading',
            value: () => '',
            cell: (row: Aircraft) => (
              <Button onPress={() => onRead(row)}>
                Record<span className="only-heard"> a reading of {row.registration}</span>
              </Button>
            ),
            canSort: false,
          },
        ]
      : []),
    ...(onMove
      ? [
          {
            id: 'move',
            header: 'Owner',
            value: () => '',
            cell: (row: Aircraft) => (
              <Button onPress={() => onMove(row)}>
                Move<span className="only-heard"> {row.registration} to another customer</span>
              </Button>
            ),
            canSort: false,
          },
        ]
      : []),
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
