import { clockKindTitles } from '@hubwright/contracts/work-orders/clock-operations';
import type { ReactNode } from 'react';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { minuteWords, type TimeEntry, workWords } from './clock.ts';

/** Where everyone's time went, newest first; what was mended or entered afterwards says why. */
export function TimeTable(props: {
  entries: readonly TimeEntry[];
  onMend: ((entry: TimeEntry) => void) | undefined;
  tools: ReactNode;
}) {
  const { onMend } = props;
  const columns: Column<TimeEntry>[] = [
    { id: 'person', header: 'Who', value: (row) => row.person.displayName },
    { id: 'kind', header: 'Kind', value: (row) => clockKindTitles[row.kind] },
    { id: 'work', header: 'Work', value: workWords },
    { id: 'order', header: 'Work order', value: (row) => row.step?.workOrder },
    {
      id: 'from',
      header: 'Begun',
      value: (row) => row.startedAt,
      cell: (row) => <InstantText instant={row.startedAt} />,
    },
    {
      id: 'minutes',
      header: 'Minutes',
      value: (row) => row.minutes ?? undefined,
      cell: (row) =>
        row.minutes === null ? (
          <StateMark state={row.forgotten ? 'hold' : 'open'} word={row.forgotten ? 'forgotten' : 'runs'} />
        ) : (
          minuteWords(row.minutes)
        ),
    },
    {
      id: 'why',
      header: 'Entered afterwards',
      value: (row) => row.lateReason ?? undefined,
      cell: (row) =>
        row.lateReason ? (
          <>
            {row.lateReason}
            {row.enteredBy ? <span className="soft"> ({row.enteredBy})</span> : null}
          </>
        ) : null,
    },
    ...(onMend
      ? [
          {
            id: 'mend',
            header: 'Mend',
            value: () => undefined,
            cell: (row: TimeEntry) => (
              <Button
                weight="quiet"
                onPress={() => onMend(row)}
                aria-label={`Mend ${workWords(row)} of ${row.person.displayName}`}
              >
                Mend
              </Button>
            ),
          },
        ]
      : []),
  ];
  return (
    <DataTable
      caption="Time entries"
      rows={props.entries}
      columns={columns}
      rowKey={(row) => row.id}
      tools={props.tools}
      empty={
        <EmptyState title="Nobody clocked anything">Time comes from scans of the barcodes on travelers.</EmptyState>
      }
    />
  );
}
