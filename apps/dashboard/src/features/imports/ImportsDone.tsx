import { importTitles } from '@hubwright/contracts/imports/kinds';
import type { importOperations } from '@hubwright/contracts/imports/operations';
import type { RowOf } from '../../api/pages.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';

export type ImportDone = RowOf<typeof importOperations.listImports>;

const columns: readonly Column<ImportDone>[] = [
  {
    id: 'at',
    header: 'When',
    value: (row) => row.appliedAt,
    cell: (row) => <InstantText instant={row.appliedAt} />,
  },
  { id: 'kind', header: 'What', value: (row) => importTitles[row.kind] },
  { id: 'new', header: 'New', value: (row) => row.newRows, isNumber: true },
  { id: 'changed', header: 'Changed', value: (row) => row.changedRows, isNumber: true },
  { id: 'same', header: 'The same', value: (row) => row.sameRows, isNumber: true },
  { id: 'who', header: 'By', value: (row) => row.appliedBy.displayName },
];

/** Tables that were taken over; lots of an opening stock that wait are accepted from here. */
export function ImportsDone(props: {
  rows: readonly ImportDone[];
  mayAccept: boolean;
  onAccept: (row: ImportDone) => void;
}) {
  const { rows, mayAccept, onAccept } = props;
  const waiting: Column<ImportDone> = {
    id: 'waiting',
    header: 'Lots that wait',
    value: (row) => row.waitingLots,
    cell: (row) =>
      row.waitingLots > 0 && mayAccept ? (
        <Button onPress={() => onAccept(row)}>Accept {row.waitingLots}</Button>
      ) : (
        String(row.waitingLots)
      ),
  };
  return (
    <DataTable
      caption="Tables taken over"
      rows={rows}
      columns={[...columns, waiting]}
      rowKey={(row) => row.id}
      empty={
        <EmptyState title="No table was taken over yet">
          Begin with the part numbers; prices, stock and kit lists name them.
        </EmptyState>
      }
    />
  );
}
