import { processOperations } from '@hubwright/contracts/processes/operations';
import { usePages } from '../../api/pages.ts';
import { daysBetween } from '../../format/dates.ts';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { calibrationMark, type Instrument } from './instruments.ts';

function columnsOf(today: string): readonly Column<Instrument>[] {
  return [
    {
      id: 'tag',
      header: 'Instrument',
      value: (row) => row.tag,
      cell: (row) => (
        <>
          <span className="code">{row.tag}</span> <span className="soft">{row.title}</span>
        </>
      ),
    },
    { id: 'where', header: 'Where', value: (row) => row.location },
    {
      id: 'due',
      header: 'Calibration',
      value: (row) => row.calibrationDueOn,
      cell: (row) => (
        <>
          <StateMark {...calibrationMark(row, today)} /> <DateText date={row.calibrationDueOn} />
        </>
      ),
    },
  ];
}

/** Instruments in service whose calibration is over or ends within so many days. */
export function ExpiringInstruments({ today, withinDays }: { today: string; withinDays: number }) {
  const instruments = usePages(processOperations.listInstruments, { order: 'due' });
  const soon = instruments.rows.filter(
    (each) => each.inService && daysBetween(today, each.calibrationDueOn) <= withinDays,
  );
  return (
    <PagesFrame of={instruments}>
      <DataTable
        caption="Instruments coming due"
        rows={soon}
        columns={columnsOf(today)}
        rowKey={(row) => row.id}
        rowHref={(row) => `/instruments/${row.id}`}
        empty={<EmptyState title={`No calibration ends within ${withinDays} days`} />}
      />
    </PagesFrame>
  );
}
