import type { Reply } from '@hubwright/contracts/operation';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { countOf } from '../../format/numbers.ts';
import { levelWords, processWords } from '../../format/process-words.ts';
import { DateText, DueText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { LogTrainingForm } from './log-training.tsx';
import styles from './people.module.css';
import { hoursOf, kindWords, ownTrainingQuery, resultWords, type TrainingRow, trainingLogQuery } from './training.ts';

const columns: readonly Column<TrainingRow>[] = [
  {
    id: 'title',
    header: 'Training',
    value: (row) => row.title,
    cell: (row) => (
      <div className={styles.training}>
        {row.title}{' '}
        <span className="soft small">
          {kindWords[row.kind]}, {hoursOf(row.minutes)}, by {row.givenBy}
        </span>
        {row.paper ? <a href={`/api/training/${row.id}/paper`}>Paper</a> : null}
        {row.supersededById ? <StateMark state="note" word="corrected since" /> : null}
      </div>
    ),
  },
  { id: 'held', header: 'Held', value: (row) => row.heldOn, cell: (row) => <DateText date={row.heldOn} /> },
  {
    id: 'result',
    header: 'Result',
    value: (row) => resultWords[row.result],
    cell: (row) => <StateMark state={row.result === 'passed' ? 'passed' : 'hold'} word={resultWords[row.result]} />,
  },
  {
    id: 'due',
    header: 'Through',
    value: (row) => row.dueOn ?? '',
    cell: (row) => (row.dueOn && !row.supersededById ? <DueText date={row.dueOn} /> : (row.dueOn ?? 'for good')),
  },
];

type Log = Reply<typeof trainingOperations.trainingLog>;

function NotCurrent({ of }: { of: Log['notCurrent'] }) {
  return of.map(({ process, level, missing }) => (
    <p key={`${process} ${level}`}>
      <StateMark state="stop" word="not current" /> {processWords[process]}, {levelWords[level]}: needs{' '}
      {missing.map(({ title }) => title).join(', ')}
    </p>
  ));
}

function SupervisedWork({ of }: { of: Log['supervised'] }) {
  return (
    <>
      <h3>Under supervision</h3>
      {of.length === 0 ? (
        <p className="soft">No step was signed under supervision.</p>
      ) : (
        <ul className="lines">
          {of.map((one) => (
            <li key={one.process}>
              <div>
                <strong>{processWords[one.process]}</strong> {countOf(one.steps, 'step')},{' '}
                {one.clockedMinutes > 0 ? `${hoursOf(one.clockedMinutes)} by the clock, ` : ''}
                {hoursOf(one.minutes)} by standard time
                <p className="soft small">
                  <DateText date={one.first} /> to <DateText date={one.last} />, supervised by{' '}
                  {one.supervisors.join(', ')}
                </p>
              </div>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** One's own log, to read. */
export function OwnTraining() {
  const { rows, notCurrent, supervised } = useSuspenseQuery(ownTrainingQuery).data;
  return (
    <div className="stack">
      <NotCurrent of={notCurrent} />
      <DataTable
        caption="My trainings"
        rows={rows}
        columns={columns}
        rowKey={(row) => row.id}
        empty={
          <EmptyState title="No training logged yet">A manager or an inspector logs what you are taught.</EmptyState>
        }
      />
      <SupervisedWork of={supervised} />
    </div>
  );
}

/** What a person was taught, what their authorisations lack, and what they did under supervision. */
export function TrainingLog({ personId }: { personId: string }) {
  const { rows, notCurrent, supervised } = useSuspenseQuery(trainingLogQuery(personId)).data;
  const mayLog = useMay(trainingOperations.logTraining);
  const [open, setOpen] = useState<'new' | TrainingRow>();
  const close = () => setOpen(undefined);
  return (
    <div className="stack">
      <NotCurrent of={notCurrent} />
      <DataTable
        caption="Training log"
        rows={rows}
        columns={columns}
        rowKey={(row) => row.id}
        {...(mayLog ? { onOpen: (row: TrainingRow) => (row.supersededById ? undefined : setOpen(row)) } : {})}
        tools={mayLog ? <Button onPress={() => setOpen('new')}>Log a training</Button> : null}
        empty={
          <EmptyState title="No training logged yet">What a person is taught goes in here, with its paper.</EmptyState>
        }
      />
      <SupervisedWork of={supervised} />
      <Dialog
        title={open === 'new' ? 'Log a training' : 'Correct a training'}
        width="wide"
        isOpen={open !== undefined}
        onClose={close}
      >
        {open ? (
          <LogTrainingForm
            personId={personId}
            wrong={open === 'new' ? undefined : open}
            onDone={close}
            onCancel={close}
          />
        ) : null}
      </Dialog>
    </div>
  );
}
