import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { stageTitles } from '@hubwright/contracts/work-orders/states';
import { usePages } from '../../api/pages.ts';
import { countOf } from '../../format/numbers.ts';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import type { WorkOrderRow } from './work-orders.ts';

/** Stages in which the bench has something to do with a unit. */
const benchStages: readonly string[] = ['received', 'teardown', 'inspected', 'in-work', 'build', 'final-inspection'];

/** How far the kit is, in lines that must get something new. */
function kitWords({ newLines, pulled, promised }: NonNullable<WorkOrderRow['kit']>): string {
  if (newLines === pulled) return 'all lines pulled';
  const rest = promised > 0 ? `, ${promised} promised` : '';
  return `${pulled} of ${countOf(newLines, 'line')} pulled${rest}`;
}

const columns: readonly Column<WorkOrderRow>[] = [
  {
    id: 'number',
    header: 'Work order',
    value: (row) => row.number,
    cell: (row) => <span className="code">{row.number}</span>,
  },
  {
    id: 'unit',
    header: 'Unit',
    value: (row) => `${row.unit.designation} ${row.unit.serial ?? 'serial not readable yet'}`,
  },
  { id: 'stage', header: 'Where it is', value: (row) => stageTitles[row.stage] },
  {
    id: 'kit',
    header: 'Kit',
    value: (row) => (row.kit ? row.kit.newLines - row.kit.pulled - row.kit.promised : 0),
    cell: (row) => (row.kit ? kitWords(row.kit) : 'no kit'),
  },
  {
    id: 'holds',
    header: 'Stops',
    value: (row) => row.holds.map((hold) => hold.reason).join('; '),
    cell: (row) =>
      row.holds.length > 0 ? (
        <StateMark state="hold" word={row.holds.map((hold) => hold.reason).join('; ')} />
      ) : (
        'nothing'
      ),
  },
  {
    id: 'promised',
    header: 'Promised',
    value: (row) => row.promisedOn ?? '',
    cell: (row) => (row.promisedOn ? <DateText date={row.promisedOn} /> : 'no promise'),
  },
];

/** Units the bench can work on; a row opens the unit's build and teardown page. */
export function UnitsForBench() {
  const orders = usePages(workOrderOperations.listWorkOrders, { stage: 'open' });
  const rows = orders.rows.filter((row) => benchStages.includes(row.stage));
  return (
    <PagesFrame of={orders}>
      <DataTable
        caption="Units at the benches"
        rows={rows}
        columns={columns}
        rowKey={(row) => row.id}
        rowHref={(row) => `/build/${row.id}`}
        empty={<EmptyState title="No unit is at the benches">The front desk books units in.</EmptyState>}
      />
    </PagesFrame>
  );
}
