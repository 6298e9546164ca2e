import type { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import type { Reply } from '@hubwright/contracts/operation';
import type { ReactNode } from 'react';
import { DueText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { type State, StateMark } from '../../ui/StateMark.tsx';

type Served = Reply<typeof promiseOperations.lotServes>['rows'][number];

function markOf({ how, late }: Served): { state: State; word: string } {
  if (late) return { state: 'waiting', word: 'counted on, comes late' };
  if (how === 'frozen') return { state: 'hold', word: 'frozen for it' };
  if (how === 'promised') return { state: 'have', word: 'promised to it' };
  return { state: 'on-order', word: 'counted on' };
}

const columns: readonly Column<Served>[] = [
  {
    id: 'kit',
    header: 'Kit',
    value: (row) => row.kitCode,
    cell: (row) => <Link href={`/kits/${row.kitId}?sheet=lines&line=${row.lineId}`}>{row.kitCode}</Link>,
  },
  {
    id: 'unit',
    header: 'Work order',
    value: (row) => row.workOrder,
    cell: (row) => <Link href={`/work-orders/${row.workOrderId}`}>{row.workOrder}</Link>,
  },
  { id: 'line', header: 'For', value: (row) => `${row.part.number} ${row.position}` },
  { id: 'quantity', header: 'Pieces', value: (row) => row.quantity, isNumber: true },
  { id: 'needed', header: 'Needed by', value: (row) => row.needBy, cell: (row) => <DueText date={row.needBy} /> },
  { id: 'how', header: 'How', value: (row) => markOf(row).word, cell: (row) => <StateMark {...markOf(row)} /> },
  {
    id: 'likely',
    header: 'Work',
    value: (row) => (row.likely === null ? 'approved' : `${row.likely} % likely`),
  },
];

/** Which kit lines a lot or an order serves, as things stand. */
export function ServesTable({ caption, rows, tools }: { caption: string; rows: readonly Served[]; tools?: ReactNode }) {
  return (
    <DataTable
      caption={caption}
      rows={rows}
      columns={columns}
      rowKey={(row) => row.lineId + row.how}
      tools={tools}
      empty={<EmptyState title="No open kit counts on it">It is free for whatever comes.</EmptyState>}
    />
  );
}
