import { scopeTitles } from '@hubwright/contracts/manuals/words';
import { consentTitles, stageTitles } from '@hubwright/contracts/work-orders/states';
import type { ReactNode } from 'react';
import { DateText, DueText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { holderWords, unitWords } from './order-words.ts';
import type { WorkOrderRow } from './work-orders.ts';

const isOver = (row: WorkOrderRow) => row.stage === 'shipped' || row.stage === 'closed';

const columns: readonly Column<WorkOrderRow>[] = [
  {
    id: 'number',
    header: 'Work order',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  { id: 'customer', header: 'Customer', value: (row) => row.customer.name },
  { id: 'unit', header: 'Unit', value: (row) => unitWords(row.unit) },
  { id: 'scope', header: 'Scope', value: (row) => scopeTitles[row.scope] },
  { id: 'stage', header: 'Where it is', value: (row) => stageTitles[row.stage] },
  { id: 'days', header: 'Days there', value: (row) => row.daysInStage, isNumber: true },
  { id: 'consent', header: 'Money and consent', value: (row) => consentTitles[row.consent] },
  { id: 'ball', header: 'Next', value: (row) => holderWords(row.ball) },
  {
    id: 'holds',
    header: 'Holds',
    value: (row) => row.holds.map((hold) => hold.reason).join('; '),
    cell: (row) =>
      row.holds.length === 0 ? '' : <StateMark state="hold" word={row.holds.map((hold) => hold.reason).join('; ')} />,
  },
  {
    id: 'promised',
    header: 'Promised',
    value: (row) => row.promisedOn ?? '',
    cell: (row) =>
      row.promisedOn === null ? (
        <span className="soft">no promise</span>
      ) : isOver(row) ? (
        <DateText date={row.promisedOn} />
      ) : (
        <DueText date={row.promisedOn} />
      ),
  },
  {
    id: 'received',
    header: 'Received',
    value: (row) => row.receivedOn,
    cell: (row) => <DateText date={row.receivedOn} />,
  },
];

export function OrderTable({ rows, tools }: { rows: readonly WorkOrderRow[]; tools: ReactNode }) {
  return (
    <DataTable
      caption="Work orders"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.id}
      rowHref={(row) => `/work-orders/${row.id}`}
      tools={tools}
      empty={<EmptyState title="No work order fits">Search for less, or show the closed ones too.</EmptyState>}
    />
  );
}
