import type { ReactNode } from 'react';
import { DueText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import type { CountDue } from './counts.ts';

const columns: readonly Column<CountDue>[] = [
  { id: 'bin', header: 'Bin', value: (row) => row.bin, cell: (row) => <span className="code">{row.bin}</span> },
  { id: 'lot', header: 'Lot', value: (row) => row.lotCode, cell: (row) => <span className="code">{row.lotCode}</span> },
  {
    id: 'part',
    header: 'Part',
    value: (row) => `${row.part.number} ${row.part.description}`,
    cell: (row) => (
      <>
        <span className="code">{row.part.number}</span> <span className="soft">{row.part.description}</span>
      </>
    ),
  },
  { id: 'class', header: 'Counted as', value: (row) => row.countClass },
  { id: 'due', header: 'Due', value: (row) => row.dueOn, cell: (row) => <DueText date={row.dueOn} /> },
  {
    id: 'last',
    header: 'Last counted',
    value: (row) => row.lastCounted ?? '',
    cell: (row) => (row.lastCounted ? <InstantText instant={row.lastCounted} /> : <span className="soft">never</span>),
  },
  {
    id: 'counting',
    header: 'Being counted by',
    value: (row) => row.counting ?? '',
    cell: (row) => row.counting ?? <span className="soft">nobody</span>,
  },
];

/** What is due, without the number on the book: it is counted, not copied. */
export function CountDueTable(props: {
  rows: readonly CountDue[];
  tools: ReactNode;
  onCount: ((row: CountDue) => void) | undefined;
}) {
  const { onCount } = props;
  const doing: readonly Column<CountDue>[] = onCount
    ? [
        {
          id: 'do',
          header: 'Do',
          value: () => '',
          cell: (row) => (
            <Button onPress={() => onCount(row)} aria-label={`Count ${row.lotCode} in ${row.bin}`}>
              Count
            </Button>
          ),
        },
      ]
    : [];
  return (
    <DataTable
      caption="Counts that are due"
      rows={props.rows}
      columns={[...columns, ...doing]}
      rowKey={(row) => `${row.lotId} ${row.bin}`}
      tools={props.tools}
      empty={<EmptyState title="Nothing is due">Look further ahead, or choose a bin to count all of it.</EmptyState>}
    />
  );
}
