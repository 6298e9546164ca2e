import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { FormProblem } from '../../ui/FormProblem.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Letter } from './reminders.ts';

/** What may be done with a letter where it stands: say that it was posted, try again or print, take it back. */
export function LetterActions({ letter }: { letter: Letter }) {
  const { state } = letter;
  return (
    <>
      {state === 'to-post' ? <Posted letter={letter} /> : null}
      {state === 'failed' ? <Resume letter={letter} /> : null}
      {['waiting', 'failed', 'to-post'].includes(state) ? <Withdraw letter={letter} /> : null}
    </>
  );
}

function Posted({ letter }: { letter: Letter }) {
  const post = useCommand(reminderOperations.markLetterPosted);
  const today = useToday();
  const [postedOn, setPostedOn] = useState(today);
  const send = () =>
    post.mutate(
      { input: { letterId: letter.id, postedOn }, version: letter.version },
      { onSuccess: () => say(`${letter.number} was posted.`) },
    );
  return (
    <CommandForm problem={post.error} isPending={post.isPending} submit="It was printed and posted" onSubmit={send}>
      <DateField name="postedOn" label="Posted on" value={postedOn} onChange={setPostedOn} isRequired />
    </CommandForm>
  );
}

function Resume({ letter }: { letter: Letter }) {
  const resume = useCommand(reminderOperations.resumeLetter);
  const go = (way: 'e-mail' | 'paper', words: string) =>
    resume.mutate(
      { input: { letterId: letter.id, way }, version: letter.version },
      { onSuccess: () => say(`${letter.number}: ${words}.`) },
    );
  return (
    <div className="stack">
      <FormProblem problem={resume.error} />
      <div className="row">
        <Button weight="next" isPending={resume.isPending} onPress={() => go('e-mail', 'it is tried again')}>
          Try again
        </Button>
        <Button isDisabled={resume.isPending} onPress={() => go('paper', 'print and post it')}>
          Print it instead
        </Button>
      </div>
    </div>
  );
}

function Withdraw({ letter }: { letter: Letter }) {
  const withdraw = useCommand(reminderOperations.withdrawLetter);
  const [reason, setReason] = useState('');
  const [isAsking, setAsking] = useState(false);
  const send = () =>
    withdraw.mutate(
      { input: { letterId: letter.id, reason }, version: letter.version },
      { onSuccess: () => say(`${letter.number} is withdrawn; its units are proposed again.`) },
    );
  if (!isAsking)
    return (
      <Button weight="quiet" onPress={() => setAsking(true)}>
        Take this letter back
      </Button>
    );
  return (
    <CommandForm
      problem={withdraw.error}
      isPending={withdraw.isPending}
      submit="Take it back"
      onSubmit={send}
      onCancel={() => setAsking(false)}
    >
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </CommandForm>
  );
}
