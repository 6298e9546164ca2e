import { sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import type { ReactNode } from 'react';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { CustomerRow } from './customers.ts';

const columns: readonly Column<CustomerRow>[] = [
  { id: 'name', header: 'Customer', value: (row) => row.name },
  { id: 'code', header: 'Code', value: (row) => row.code, cell: (row) => <span className="code">{row.code}</span> },
  { id: 'contact', header: 'Whom to call', value: (row) => row.contactName },
  { id: 'phone', header: 'Telephone', value: (row) => row.phone },
  { id: 'aircraft', header: 'Aircraft', value: (row) => row.aircraftCount, isNumber: true },
  {
    id: 'sources',
    header: 'Accepts parts',
    value: (row) => row.acceptedSources.map((source) => sourceClassTitles[source]).join(', '),
  },
  {
    id: 'bills',
    header: 'Bills',
    value: (row) => (row.unpaidHold ? 'unpaid' : ''),
    cell: (row) => (row.unpaidHold ? <StateMark state="hold" word="unpaid" /> : ''),
  },
];

export function CustomerTable({ rows, tools }: { rows: readonly CustomerRow[]; tools: ReactNode }) {
  return (
    <DataTable
      caption="Customers"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.id}
      rowHref={(row) => `/customers/${row.id}`}
      tools={tools}
      empty={<EmptyState title="No customer fits">Search for less, or add the customer.</EmptyState>}
    />
  );
}
