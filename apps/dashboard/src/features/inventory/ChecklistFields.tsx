import { checkAnswers, checkAnswerTitles } from '@hubwright/contracts/inventory/receiving-operations';
import { RadioList } from '../../ui/Checkbox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { Checklist } from './checklists.ts';
import type { Looked } from './receive-draft.ts';

const choices = checkAnswers.map((value) => ({ value, text: checkAnswerTitles[value] }));

/** What is looked at for this class of part. Nothing is answered beforehand. */
export function ChecklistFields(props: {
  checklist: Checklist;
  answers: readonly Looked[];
  onAnswer: (item: number, changes: Partial<Looked>) => void;
}) {
  const { checklist, answers, onAnswer } = props;
  return (
    <fieldset className="field-group">
      <legend>Look at this (revision {checklist.revision} of the list)</legend>
      {checklist.items.map((item, at) => (
        <div key={item} className="stack tight">
          <RadioList
            name={`answers/${at}`}
            label={item}
            value={answers[at]?.answer ?? null}
            onChange={(answer) => onAnswer(at, { answer })}
            choices={choices}
            isRequired
          />
          {answers[at]?.answer === 'not-good' ? (
            <TextField
              name={`answers/${at}/note`}
              label="What is not good"
              value={answers[at]?.note ?? ''}
              onChange={(note) => onAnswer(at, { note })}
              isRequired
            />
          ) : null}
        </div>
      ))}
    </fieldset>
  );
}
