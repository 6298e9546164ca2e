import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { BenchBoard } from './bench-board.ts';

type Queue = BenchBoard['byProcess'][number];

const columns: readonly Column<Queue>[] = [
  { id: 'process', header: 'Process', value: (row) => row.process.replaceAll('-', ' ') },
  { id: 'level', header: 'Step', value: (row) => (row.level === 'inspect' ? 'inspection' : 'work') },
  { id: 'ready', header: 'Ready', value: (row) => row.ready, isNumber: true },
  { id: 'blocked', header: 'Blocked', value: (row) => row.blocked, isNumber: true },
  {
    id: 'hours',
    header: 'Standard hours ready',
    value: (row) => row.minutes / 60,
    cell: (row) => (row.minutes / 60).toFixed(1),
    isNumber: true,
  },
];

/** How much waits at each process of the shop. */
export function ProcessQueues({ board }: { board: BenchBoard }) {
  return (
    <DataTable
      caption="Queue of each process"
      rows={board.byProcess}
      columns={columns}
      rowKey={(row) => `${row.process} ${row.level}`}
      empty={<EmptyState title="No step is waiting">Travelers are raised when a teardown begins.</EmptyState>}
    />
  );
}
