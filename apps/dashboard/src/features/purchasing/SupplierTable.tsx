import { addDays } from '@hubwright/rules/dates';
import type { ReactNode } from 'react';
import { DueText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { approvalMark, type SupplierRow } from './suppliers.ts';

function columns(today: string): readonly Column<SupplierRow>[] {
  const mark = (row: SupplierRow) => approvalMark(row.approvedUntil, today, addDays(today, 31));
  return [
    { id: 'name', header: 'Supplier', value: (row) => row.name },
    { id: 'code', header: 'Code', value: (row) => row.code, cell: (row) => <span className="code">{row.code}</span> },
    {
      id: 'approval',
      header: 'Approval',
      value: (row) => mark(row).word,
      cell: (row) => <StateMark {...mark(row)} />,
    },
    {
      id: 'until',
      header: 'Last good day',
      value: (row) => row.approvedUntil,
      cell: (row) => (row.approvedUntil ? <DueText date={row.approvedUntil} /> : <span className="soft">none</span>),
    },
    { id: 'phone', header: 'Phone', value: (row) => row.phone },
    { id: 'email', header: 'E-mail', value: (row) => row.email },
  ];
}

/** The approved-supplier list. */
export function SupplierTable(props: { rows: readonly SupplierRow[]; today: string; tools: ReactNode }) {
  return (
    <DataTable
      caption="Approved suppliers"
      rows={props.rows}
      columns={columns(props.today)}
      rowKey={(row) => row.id}
      rowHref={(row) => `/suppliers/${row.id}`}
      tools={props.tools}
      empty={
        <EmptyState title="There is no supplier yet">Add the first one, with the day its approval ends.</EmptyState>
      }
    />
  );
}
