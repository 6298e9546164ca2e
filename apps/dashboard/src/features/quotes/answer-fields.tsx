import { Checkbox } from '../../ui/Checkbox.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** Who answered, when, and what was said. */
export interface Answer {
  readonly decidedByName: string;
  readonly isEarlier: boolean;
  /** Date and time of this device, when it was not just now. */
  readonly at: string;
  readonly note: string;
}
export const noAnswer: Answer = { decidedByName: '', isEarlier: false, at: '', note: '' };

/** The answer as the commands take it; an unreadable time goes as it is, so that the server's sentence points at it. */
export function answerToSend({ decidedByName, isEarlier, at, note }: Answer) {
  const time = isEarlier ? Date.parse(at) : Date.now();
  return { decidedByName, note, decidedAt: Number.isNaN(time) ? '' : new Date(time).toISOString() };
}

export function AnswerFields({ answer, onChange }: { answer: Answer; onChange: (answer: Answer) => void }) {
  return (
    <>
      <TextField
        name="decidedByName"
        label="Who said it"
        hint="The person’s name, not the company’s"
        value={answer.decidedByName}
        onChange={(decidedByName) => onChange({ ...answer, decidedByName })}
        isRequired
      />
      <Checkbox isSelected={answer.isEarlier} onChange={(isEarlier) => onChange({ ...answer, isEarlier })}>
        It was said earlier
      </Checkbox>
      {answer.isEarlier ? (
        <TextField
          name="decidedAt"
          label="When"
          type={'datetime-local' as 'text'}
          value={answer.at}
          onChange={(at) => onChange({ ...answer, at })}
          isRequired
        />
      ) : null}
      <TextField
        name="note"
        label="How, and what was said"
        hint="By telephone, mail or at the desk"
        lines={2}
        value={answer.note}
        onChange={(note) => onChange({ ...answer, note })}
      />
    </>
  );
}
