import { InstantText } from '../../format/values.tsx';
import { DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type RunRow, runMarks } from './governor.ts';

/** Runs on the bench, newest first. */
export function RunTable({ rows }: { rows: readonly RunRow[] }) {
  return (
    <DataTable
      caption="Runs on the governor bench"
      rows={rows}
      rowKey={({ id }) => id}
      rowHref={({ id }) => `/governor-runs/${id}`}
      columns={[
        { id: 'number', header: 'Run', value: ({ number }) => number },
        {
          id: 'state',
          header: 'State',
          value: ({ state }) => runMarks[state].word,
          cell: ({ state }) => <StateMark {...runMarks[state]} />,
        },
        { id: 'unit', header: 'Governor', value: ({ designation, serial }) => `${designation} ${serial}` },
        { id: 'work', header: 'Work order', value: ({ workOrderNumber }) => workOrderNumber },
        { id: 'application', header: 'Application', value: ({ application }) => application },
        { id: 'good', header: 'Good points', value: ({ pointsGood, points }) => `${pointsGood} of ${points}` },
        { id: 'by', header: 'Begun by', value: ({ startedBy }) => startedBy.displayName },
        {
          id: 'at',
          header: 'Begun',
          value: ({ startedAt }) => startedAt,
          cell: ({ startedAt }) => <InstantText instant={startedAt} />,
        },
      ]}
      empty={<EmptyState title="No governor was on the bench yet" />}
    />
  );
}
