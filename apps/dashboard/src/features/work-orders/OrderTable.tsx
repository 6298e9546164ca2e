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
  { id: 'consent', header: 'Consent', value: (row) => consentTitles[row.consent] },
  {
    id: 'next',
    header: 'Next',
    value: (row) => [holderWords(row.ball), ...row.holds.map((hold) => `held: ${hold.reason}`)].join('; '),
    cell: (row) => (
      <>
        {holderWords(row.ball)}
        {row.holds.map((hold) => (
          <StateMark key={hold.id} state="hold" word={hold.reason} />
        ))}
      </>
    ),
  },
  {
    id: 'promised',
    header: 'Promised',
    value: (row) => row.promisedOn ?? '',
    cell: (row) =>
      row.promisedOn === null ? (
        <span className="soft quantity">no promise</span>
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
