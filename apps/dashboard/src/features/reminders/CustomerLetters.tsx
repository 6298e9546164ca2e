import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { LetterLog } from './LetterLog.tsx';
import { type Choice, choiceQuery } from './reminders.ts';

/** Whether a customer wants letters, as they said, and the letters they got. */
export function CustomerLetters({ customerId }: { customerId: string }) {
  const choice = useSuspenseQuery(choiceQuery(customerId)).data;
  const mayChoose = useMay(reminderOperations.setReminderChoice);
  const [isChoosing, setChoosing] = useState(false);
  const [last] = choice.said;
  return (
    <>
      <div className="row between">
        <p>
          <StateMark
            state={choice.wantsLetters ? 'have' : 'hold'}
            word={choice.wantsLetters ? 'gets letters' : 'wants no letters'}
          />{' '}
          {last ? (
            <span className="small soft">
              said on <DateText date={last.saidOn} />: {last.reason} ({last.by})
            </span>
          ) : null}
        </p>
        {mayChoose ? (
          <Button onPress={() => setChoosing(true)}>
            {choice.wantsLetters ? 'They want no letters' : 'They want letters again'}
          </Button>
        ) : null}
      </div>
      <LetterLog customerId={customerId} />
      {isChoosing ? <ChoiceDialog customerId={customerId} choice={choice} onClose={() => setChoosing(false)} /> : null}
    </>
  );
}

interface ChoiceDialogProps {
  customerId: string;
  choice: Choice;
  onClose: () => void;
}

function ChoiceDialog({ customerId, choice, onClose }: ChoiceDialogProps) {
  const { seen, isNewer, takeNewest } = useSeen(choice);
  const choose = useCommand(reminderOperations.setReminderChoice);
  const [saidOn, setSaidOn] = useState(useToday());
  const [reason, setReason] = useState('');
  const wantsLetters = !seen.wantsLetters;
  const send = () =>
    choose.mutate(
      { input: { customerId, wantsLetters, saidOn, reason }, version: seen.version },
      {
        onSuccess: () => {
          say(wantsLetters ? 'They get letters again.' : 'They get no more letters; what had not gone is withdrawn.');
          onClose();
        },
      },
    );
  return (
    <Dialog title={wantsLetters ? 'They want letters again' : 'They want no letters'} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={choose.error}
        isPending={choose.isPending}
        submit={wantsLetters ? 'Send letters again' : 'Send no more letters'}
        onSubmit={send}
        onCancel={onClose}
      >
        <DateField name="saidOn" label="They said so on" value={saidOn} onChange={setSaidOn} isRequired />
        <TextField name="reason" label="Who said it, and how" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
