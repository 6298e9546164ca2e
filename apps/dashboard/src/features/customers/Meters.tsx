import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { figureOf, figureValue, MeterFigure, meterWords } from '../../format/meter-words.tsx';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Aircraft } from './customers.ts';
import { RecordMeterChange } from './record-meter-change.tsx';
import { StrikeReading } from './strike-reading.tsx';

export type Reading = Reply<typeof meterOperations.metersOfAircraft>['readings'][number];
type Change = Reply<typeof meterOperations.metersOfAircraft>['changes'][number];

function readingColumns(onStrike: ((reading: Reading) => void) | undefined): readonly Column<Reading>[] {
  return [
    { id: 'readOn', header: 'Read on', value: (row) => row.readOn, cell: (row) => <DateText date={row.readOn} /> },
    { id: 'meter', header: 'Meter', value: (row) => meterWords[row.meter] },
    {
      ...{ id: 'hours', header: 'It read', isNumber: true },
      value: (row) => figureValue(row.meter, figureOf(row)),
      cell: (row) => <MeterFigure meter={row.meter} figure={figureOf(row)} />,
    },
    {
      id: 'counts',
      header: 'Counts',
      value: (row) => row.struckBecause ?? 'yes',
      cell: (row) =>
        row.struckBecause === null ? 'yes' : <StateMark state="note" word={`a mistake: ${row.struckBecause}`} />,
    },
    ...(onStrike
      ? [
          {
            ...{ id: 'strike', header: 'Was it a mistake?', value: () => '', canSort: false },
            cell: (row: Reading) =>
              row.struckBecause === null ? (
                <Button onPress={() => onStrike(row)}>
                  Mark
                  <span className="only-heard">
                    {` the ${meterWords[row.meter]} reading of ${row.readOn} as a mistake`}
                  </span>
                </Button>
              ) : null,
          },
        ]
      : []),
  ];
}

/** What the meters of an aircraft showed, which reading was a mistake, and when a meter was replaced. */
export function Meters(props: { aircraft: Aircraft; today: string; mayWrite: boolean; onClose: () => void }) {
  const { aircraft, today, mayWrite, onClose } = props;
  const [doing, setDoing] = useState<Reading | 'change'>();
  const meters = useQuery(queryFor(meterOperations.metersOfAircraft, { aircraftId: aircraft.id }));
  const back = () => setDoing(undefined);
  if (doing === 'change') return <RecordMeterChange aircraft={aircraft} today={today} onClose={back} />;
  if (doing) return <StrikeReading reading={doing} registration={aircraft.registration} onClose={back} />;
  return (
    <Dialog title={`Meters of ${aircraft.registration}`} width="wide" isOpen onClose={onClose}>
      {meters.error ? <Refusal problem={meters.error} /> : null}
      {meters.data ? (
        <div className="stack">
          <Changes changes={meters.data.changes} />
          <DataTable
            caption="Readings"
            rows={meters.data.readings}
            columns={readingColumns(mayWrite ? setDoing : undefined)}
            rowKey={(row) => row.id}
            tools={mayWrite ? <Button onPress={() => setDoing('change')}>A meter was replaced</Button> : null}
            empty={<EmptyState title="Never read">Record a reading on the customer’s page.</EmptyState>}
          />
        </div>
      ) : (
        <Skeleton lines={4} />
      )}
    </Dialog>
  );
}

function Changes({ changes }: { changes: readonly Change[] }) {
  if (changes.length === 0) return null;
  return (
    <ul>
      {changes.map(({ id, meter, changedOn, oldTenths, newTenths, basis }) => (
        <li key={id}>
          <DateText date={changedOn} />: {meterWords[meter]} replaced at{' '}
          <MeterFigure meter={meter} figure={oldTenths} />, the new one at{' '}
          <MeterFigure meter={meter} figure={newTenths} /> ({basis})
        </li>
      ))}
    </ul>
  );
}
