import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type Count, countMarks, differenceWords } from './counts.ts';

const columns: readonly Column<Count>[] = [
  { id: 'lot', header: 'Lot', value: (row) => row.lotCode, cell: (row) => <span className="code">{row.lotCode}</span> },
  { id: 'part', header: 'Part', value: (row) => row.part.number },
  { id: 'place', header: 'Where', value: (row) => row.place },
  {
    id: 'difference',
    header: 'Difference',
    value: (row) => row.difference ?? '',
    cell: (row) => differenceWords(row.difference),
  },
  {
    id: 'value',
    header: 'At its price',
    value: (row) => (row.value === null ? '' : Number(row.value)),
    cell: (row) => row.value,
    isNumber: true,
  },
  { id: 'state', header: 'State', value: (row) => row.state, cell: (row) => <StateMark {...countMarks[row.state]} /> },
  { id: 'counter', header: 'Counted by', value: (row) => row.counter.displayName },
  { id: 'at', header: 'When', value: (row) => row.countedAt, cell: (row) => <InstantText instant={row.countedAt} /> },
  { id: 'decider', header: 'Decided by', value: (row) => row.decider ?? '' },
];

/** Every count; what waits can be decided by somebody who did not count it. */
export function CountTable(props: {
  counts: readonly Count[];
  mayDecide: (count: Count) => boolean;
  onDecide: (count: Count) => void;
}) {
  const decide: Column<Count> = {
    id: 'do',
    header: 'Do',
    value: () => '',
    cell: (row) =>
      props.mayDecide(row) ? (
        <Button onPress={() => props.onDecide(row)} aria-label={`Decide the count of ${row.lotCode}`}>
          Decide
        </Button>
      ) : null,
  };
  return (
    <DataTable
      caption="Counts"
      rows={props.counts}
      columns={[...columns, decide]}
      rowKey={(row) => row.id}
      rowHref={(row) => `/lots/${row.lotId}`}
      empty={<EmptyState title="Nothing has been counted yet">Begin with what is due above.</EmptyState>}
    />
  );
}
