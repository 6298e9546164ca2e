import type { Reply } from '@hubwright/contracts/operation';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { dueWords } from '../../format/dates.ts';
import { processWords } from '../../format/process-words.ts';
import { DateText } from '../../format/values.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

type Row = Reply<typeof trainingOperations.trainingDue>['rows'][number];

function columnsOf(today: string): readonly Column<Row>[] {
  return [
    { id: 'person', header: 'Person', value: (row) => row.person },
    { id: 'title', header: 'Training', value: (row) => row.title },
    { id: 'for', header: 'Needed for', value: (row) => row.processes.map((one) => processWords[one]).join(', ') },
    {
      id: 'due',
      header: 'Counts through',
      value: (row) => row.dueOn ?? '',
      cell: ({ dueOn }) =>
        dueOn === null ? (
          <StateMark state="stop" word="never passed" />
        ) : (
          <>
            <StateMark
              state={dueOn < today ? 'stop' : 'waiting'}
              word={dueOn < today ? 'run out' : dueWords(dueOn, today)}
            />{' '}
            <DateText date={dueOn} />
          </>
        ),
    },
  ];
}

/** Trainings that authorisations rest on and that need renewing. */
export function TrainingDue({ today, withinDays }: { today: string; withinDays: number }) {
  const { rows } = useSuspenseQuery(queryFor(trainingOperations.trainingDue, { withinDays })).data;
  return (
    <DataTable
      caption="Training coming to an end"
      rows={rows}
      columns={columnsOf(today)}
      rowKey={(row) => `${row.personId} ${row.itemId}`}
      empty={<EmptyState title={`No training runs out within ${withinDays} days`} />}
    />
  );
}
