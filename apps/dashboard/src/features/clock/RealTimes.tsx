import type { Reply } from '@hubwright/contracts/operation';
import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { minuteWords } from './clock.ts';

type Row = Reply<typeof clockOperations.realTimes>['rows'][number];

const columns: readonly Column<Row>[] = [
  { id: 'process', header: 'Process', value: (row) => row.process.replaceAll('-', ' ') },
  { id: 'steps', header: 'Steps', value: (row) => row.steps },
  {
    id: 'standard',
    header: 'Standard',
    value: (row) => row.standardMinutes,
    cell: (row) => minuteWords(row.standardMinutes),
  },
  { id: 'real', header: 'Real', value: (row) => row.realMinutes, cell: (row) => minuteWords(row.realMinutes) },
  {
    id: 'ratio',
    header: 'Real of standard',
    value: (row) => (row.standardMinutes > 0 ? Math.round((row.realMinutes / row.standardMinutes) * 100) : undefined),
    cell: (row) =>
      row.standardMinutes > 0 ? `${Math.round((row.realMinutes / row.standardMinutes) * 100)} %` : 'no standard time',
  },
  { id: 'redo', header: 'Of it redo', value: (row) => row.redoMinutes, cell: (row) => minuteWords(row.redoMinutes) },
];

/** Real hours against standard ones, by process, of steps that are signed. */
export function RealTimes({ from }: { from: string }) {
  const { data } = useQuery(queryFor(clockOperations.realTimes, from === '' ? {} : { from }));
  if (!data) return <Skeleton />;
  return (
    <DataTable
      caption="Real against standard time"
      rows={data.rows}
      columns={columns}
      rowKey={(row) => row.process}
      empty={
        <EmptyState title="No signed step was clocked">
          Then there is nothing to compare a standard time with.
        </EmptyState>
      }
    />
  );
}
