import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm } from './lot-form.tsx';
import { freedWords } from './stock-words.ts';

/** Somebody doubts that a lot is what its paper says. */
export function SuspectDialog({ lot, onClose }: LotDialogProps) {
  const suspect = useCommand(handlingOperations.suspectLot);
  const [reason, setReason] = useState('');
  const send = () =>
    suspect.mutate(
      { input: { lotId: lot.id, reason } },
      {
        onSuccess: ({ freed, elsewhere }) => {
          const open = elsewhere.length > 0 ? ` Go and stop the rest: ${elsewhere.join(', ')}.` : '';
          say(`${lot.code} is held apart until an inspector has decided.${open}${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <LotForm
      title={`Report ${lot.code} as suspected`}
      command={suspect}
      submit="Hold it apart"
      onSubmit={send}
      onClose={onClose}
    >
      <p>
        Nobody uses, scraps or sends back any of it until an inspector other than you has decided. Keep parts, boxes and
        papers as they are.
      </p>
      <TextField
        name="reason"
        label="What makes you doubt it"
        lines={2}
        value={reason}
        onChange={setReason}
        isRequired
      />
    </LotForm>
  );
}
