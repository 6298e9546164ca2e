import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

/** The customer was reminded: what was said stays on record. */
export function SendChaser(props: { chaserId: string; quoteNumber: string; onClose: () => void }) {
  const send = useCommand(quoteOperations.sendChaser);
  const [note, setNote] = useState('');
  return (
    <Dialog title={`Reminder of ${props.quoteNumber}`} isOpen onClose={props.onClose}>
      <CommandForm
        problem={send.error}
        isPending={send.isPending}
        submit="They were reminded"
        onCancel={props.onClose}
        onSubmit={() =>
          send.mutate(
            { input: { chaserId: props.chaserId, note } },
            {
              onSuccess: () => {
                say('The reminder is recorded.');
                props.onClose();
              },
            },
          )
        }
      >
        <TextField name="note" label="Whom you reached, and what they said" lines={3} value={note} onChange={setNote} />
      </CommandForm>
    </Dialog>
  );
}
