import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { PaperField } from './PaperField.tsx';
import { kindChoices, resultChoices, type TrainingRow, trainingItemsQuery } from './training.ts';
import { draftOf, inputOf, other, type TrainingDraft } from './training-draft.ts';

/** Puts a training into a person's log, or a right line in the place of a wrong one, which stays beside it. */
export function LogTrainingForm(props: {
  personId: string;
  wrong?: TrainingRow | undefined;
  onDone: () => void;
  onCancel: () => void;
}) {
  const { rows: items } = useSuspenseQuery(trainingItemsQuery).data;
  const today = useToday();
  const log = useCommand(trainingOperations.logTraining);
  const correct = useCommand(trainingOperations.correctTraining);
  const [draft, setDraft] = useState(() => draftOf(props.wrong, today));
  const set = (changes: Partial<TrainingDraft>) => setDraft({ ...draft, ...changes });
  const done = () => {
    say('The training is in the log.');
    props.onDone();
  };
  const submit = () => {
    const input = inputOf(draft);
    if (props.wrong)
      correct.mutate({ input: { ...input, trainingId: props.wrong.id, reason: draft.reason } }, { onSuccess: done });
    else log.mutate({ input: { ...input, personId: props.personId } }, { onSuccess: done });
  };
  const choices = [
    ...items.filter(({ active }) => active).map(({ id, title }) => ({ value: id, text: title })),
    { value: other, text: 'Something else' },
  ];
  return (
    <CommandForm
      problem={props.wrong ? correct.error : log.error}
      isPending={log.isPending || correct.isPending}
      submit={props.wrong ? 'Correct it' : 'Log the training'}
      onSubmit={submit}
      onCancel={props.onCancel}
    >
      <Select
        name="itemId"
        label="Training"
        placeholder="Choose one of the shop’s list"
        value={draft.item}
        onChange={(item) => set({ item })}
        choices={choices}
        isRequired
      />
      {draft.item === other ? (
        <TextField
          name="title"
          label="What it was"
          value={draft.title}
          onChange={(title) => set({ title })}
          isRequired
        />
      ) : null}
      <div className="field-grid">
        <Select
          name="kind"
          label="Kind"
          value={draft.kind}
          onChange={(kind) => set({ kind })}
          choices={kindChoices}
          isRequired
        />
        <Select
          name="result"
          label="Result"
          value={draft.result}
          onChange={(result) => set({ result })}
          choices={resultChoices}
          isRequired
        />
        <DateField
          name="heldOn"
          label="Held on"
          value={draft.heldOn}
          onChange={(heldOn) => set({ heldOn })}
          isRequired
        />
        <TextField
          name="minutes"
          label="It took"
          unit="min"
          inputMode="numeric"
          size={6}
          value={draft.minutes}
          onChange={(minutes) => set({ minutes })}
          isRequired
        />
        <DateField
          name="dueOn"
          label="Counts through"
          hint="Empty: by the shop’s list"
          value={draft.dueOn}
          onChange={(dueOn) => set({ dueOn })}
        />
      </div>
      <TextField
        name="givenBy"
        label="Given by"
        value={draft.givenBy}
        onChange={(givenBy) => set({ givenBy })}
        isRequired
      />
      <PaperField onSent={(fileId) => set({ fileId })} />
      {props.wrong ? (
        <TextField
          name="reason"
          label="What was wrong"
          value={draft.reason}
          onChange={(reason) => set({ reason })}
          isRequired
        />
      ) : null}
    </CommandForm>
  );
}
