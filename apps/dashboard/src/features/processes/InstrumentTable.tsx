import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { calibrationMark, type Instrument } from './instruments.ts';

function columnsOf(today: string): readonly Column<Instrument>[] {
  return [
    { id: 'tag', header: 'Tag', value: (row) => row.tag, cell: (row) => <span className="code">{row.tag}</span> },
    { id: 'title', header: 'Instrument', value: (row) => row.title },
    { id: 'kind', header: 'Kind', value: (row) => row.kind.replaceAll('-', ' ') },
    { id: 'where', header: 'Where', value: (row) => row.location },
    {
      id: 'state',
      header: 'May it be used',
      value: (row) => calibrationMark(row, today).word,
      cell: (row) => <StateMark {...calibrationMark(row, today)} />,
    },
    {
      id: 'calibrated',
      header: 'Calibrated',
      value: (row) => row.calibratedOn,
      cell: (row) => <DateText date={row.calibratedOn} />,
    },
    {
      id: 'due',
      header: 'Last good day',
      value: (row) => row.calibrationDueOn,
      cell: (row) => <DateText date={row.calibrationDueOn} />,
    },
  ];
}

/** Gauges, wrenches, protractors and testers, the most overdue first. */
export function InstrumentTable(props: {
  instruments: readonly Instrument[];
  today: string;
  hrefOf: (row: Instrument) => string;
  tools: ReactNode;
  isNarrow: boolean;
}) {
  const columns = columnsOf(props.today);
  const kept = ['tag', 'title', 'state', 'due'];
  return (
    <DataTable
      caption="Instruments"
      rows={props.instruments}
      columns={props.isNarrow ? columns.filter(({ id }) => kept.includes(id)) : columns}
      rowKey={(row) => row.id}
      rowHref={props.hrefOf}
      tools={props.tools}
      empty={
        <EmptyState title="No instrument is on the list">
          A measured step can only be signed with an instrument that is here and in calibration.
        </EmptyState>
      }
    />
  );
}
