import { scopeTitles } from '@hubwright/contracts/manuals/words';
import { DateText, Hours } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { UnitTimes, UnitVisit } from './units.ts';

const hoursValue = (tenths: number | 'unknown') => (tenths === 'unknown' ? 'unknown' : tenths / 10);

const timeColumns: readonly Column<UnitTimes>[] = [
  { id: 'on', header: 'On', value: (row) => row.recordedOn, cell: (row) => <DateText date={row.recordedOn} /> },
  {
    id: 'new',
    header: 'Since new',
    value: (row) => hoursValue(row.sinceNewTenths),
    cell: (row) => <Hours tenths={row.sinceNewTenths} />,
    isNumber: true,
  },
  {
    id: 'overhaul',
    header: 'Since overhaul',
    value: (row) => hoursValue(row.sinceOverhaulTenths),
    cell: (row) => <Hours tenths={row.sinceOverhaulTenths} />,
    isNumber: true,
  },
  {
    id: 'cycles',
    header: 'Cycles since new',
    value: (row) => row.sinceNewCycles,
    isNumber: true,
  },
  { id: 'meter', header: 'Meter', value: (row) => row.meter?.replaceAll('-', ' ') ?? '' },
  {
    id: 'read',
    header: 'It read',
    value: (row) => (row.meterTenths === null ? null : row.meterTenths / 10),
    cell: (row) => (row.meterTenths === null ? '' : <Hours tenths={row.meterTenths} />),
    isNumber: true,
  },
  {
    id: 'basis',
    header: 'From',
    // An overhaul that no visit here stands behind is one somebody else says was done.
    value: (row) => (row.basis === 'overhaul' && row.workOrderId === null ? 'overhaul, as its owner says' : row.basis),
  },
];

/** Every reading of its times, newest first. */
export function TimesTable({ times }: { times: readonly UnitTimes[] }) {
  return (
    <DataTable
      caption="Times on record"
      rows={times}
      columns={timeColumns}
      rowKey={(row) => `${row.recordedOn} ${row.basis} ${row.sinceNewTenths} ${row.workOrderId}`}
      empty={<EmptyState title="No times are on record" />}
    />
  );
}

const visitColumns: readonly Column<UnitVisit>[] = [
  {
    id: 'number',
    header: 'Work order',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  { id: 'on', header: 'Received', value: (row) => row.receivedOn, cell: (row) => <DateText date={row.receivedOn} /> },
  { id: 'customer', header: 'Customer', value: (row) => row.customer },
  { id: 'scope', header: 'Scope', value: (row) => scopeTitles[row.scope] },
  { id: 'reason', header: 'Reason', value: (row) => row.reason },
  { id: 'findings', header: 'Findings', value: (row) => row.findings, isNumber: true },
  { id: 'stage', header: 'Where', value: (row) => row.stage.replaceAll('-', ' ') },
];

/** Each time it was here. */
export function VisitTable({ visits }: { visits: readonly UnitVisit[] }) {
  return (
    <DataTable
      caption="Visits"
      rows={visits}
      columns={visitColumns}
      rowKey={(row) => row.id}
      rowHref={(row) => `/work-orders/${row.id}`}
      empty={<EmptyState title="It was never here as a unit of its own" />}
    />
  );
}
