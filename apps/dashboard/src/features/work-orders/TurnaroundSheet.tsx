import { type Scope, scopeTitles } from '@hubwright/contracts/manuals/words';
import { formatWhole } from '../../format/numbers.ts';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { monthWords, TurnaroundByMonth } from '../../ui/pictures/TurnaroundByMonth.tsx';
import { Select } from '../../ui/Select.tsx';
import { finishedScopes, type ManagerBoard, monthsOf } from './manager-board.ts';

type Month = ManagerBoard['turnaround'][number];

const columns: readonly Column<Month>[] = [
  { id: 'month', header: 'Month', value: (row) => row.month, cell: (row) => monthWords(row.month) },
  { id: 'units', header: 'Finished', value: (row) => row.units, isNumber: true },
  { id: 'median', header: 'Median days', value: (row) => row.medianDays, isNumber: true },
  { id: 'longest', header: 'Longest', value: (row) => row.longestDays, isNumber: true },
  {
    id: 'kept',
    header: 'Promises kept',
    value: (row) => row.kept,
    cell: (row) => `${formatWhole(row.kept)} of ${formatWhole(row.promised)}`,
    isNumber: true,
  },
];

/** Days from receipt to shipping of finished units, month by month, as a picture and as rows. */
export function TurnaroundSheet(props: { board: ManagerBoard; scope: string; onScope: (scope: string) => void }) {
  const scopes = finishedScopes(props.board);
  const scope: Scope = (scopes.find((each) => each.scope === props.scope) ?? scopes[0])?.scope ?? 'overhaul';
  const months = monthsOf(props.board, scope);
  if (months.length === 0) {
    return <EmptyState title="No unit was finished in the last twelve months">Shipped units appear here.</EmptyState>;
  }
  return (
    <div className="stack">
      <div className="row">
        <Select
          label="Scope"
          value={scope}
          onChange={(value) => props.onScope(value)}
          choices={scopes.map((each) => ({ value: each.scope, text: `${scopeTitles[each.scope]} (${each.units})` }))}
          isRequired
        />
      </div>
      <TurnaroundByMonth title={`Days in the house, ${scopeTitles[scope]}`} months={months} />
      <DataTable
        caption="Turnaround by month"
        rows={months}
        columns={columns}
        rowKey={(row) => row.month}
        empty={null}
      />
    </div>
  );
}
