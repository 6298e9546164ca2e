import { fleetTitles } from '@hubwright/contracts/imports/fleet-kinds';
import type { fleetTableOperations } from '@hubwright/contracts/imports/fleet-operations';
import type { RowOf } from '../../api/pages.ts';
import { InstantText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';

type FleetTableDone = RowOf<typeof fleetTableOperations.listFleetTables>;

const columns: readonly Column<FleetTableDone>[] = [
  {
    id: 'at',
    header: 'When',
    value: (row) => row.appliedAt,
    cell: (row) => <InstantText instant={row.appliedAt} />,
  },
  { id: 'kind', header: 'What', value: (row) => fleetTitles[row.kind] },
  { id: 'new', header: 'New', value: (row) => row.newRows, isNumber: true },
  { id: 'changed', header: 'Changed', value: (row) => row.changedRows, isNumber: true },
  { id: 'same', header: 'The same', value: (row) => row.sameRows, isNumber: true },
  { id: 'who', header: 'By', value: (row) => row.appliedBy.displayName },
];

/** Tables of a customer that were taken over. */
export function FleetTablesDone({ rows }: { rows: readonly FleetTableDone[] }) {
  return (
    <DataTable
      caption="Tables taken over"
      rows={rows}
      columns={columns}
      rowKey={(row) => row.id}
      empty={
        <EmptyState title="No table of this customer was taken over yet">
          Give them the template, or choose the file they send: its columns are named here once and remembered.
        </EmptyState>
      }
    />
  );
}
