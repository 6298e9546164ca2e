import type { ReactNode } from 'react';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type BalanceRow, stateMarks } from './field-balance.ts';

const columns: readonly Column<BalanceRow>[] = [
  {
    id: 'number',
    header: 'Order',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  { id: 'aircraft', header: 'Aircraft', value: (row) => `${row.aircraft.registration}, ${row.aircraft.airframe}` },
  { id: 'propeller', header: 'Propeller', value: (row) => `${row.propeller.model}, ${row.propeller.serial}` },
  { id: 'customer', header: 'Customer', value: (row) => row.customer.name },
  { id: 'airport', header: 'Where', value: (row) => row.airport },
  {
    id: 'planned',
    header: 'Planned on',
    value: (row) => row.plannedOn,
    cell: (row) => <DateText date={row.plannedOn} />,
  },
  {
    id: 'state',
    header: 'Stands at',
    value: (row) => stateMarks[row.state].word,
    cell: (row) => <StateMark {...stateMarks[row.state]} />,
  },
];

export function BalanceTable({ rows, tools }: { rows: readonly BalanceRow[]; tools: ReactNode }) {
  return (
    <DataTable
      caption="Balances on the aircraft"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.id}
      rowHref={(row) => `/on-aircraft/${row.id}`}
      tools={tools}
      empty={
        <EmptyState title="No balance on an aircraft here">
          The front desk or a manager plans one once the propeller is released and installed.
        </EmptyState>
      }
    />
  );
}
