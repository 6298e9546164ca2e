import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm } from './lot-form.tsx';
import { freedWords } from './stock-words.ts';

/** Takes a lot out of use until it is judged again. */
export function QuarantineDialog({ lot, onClose }: LotDialogProps) {
  const hold = useCommand(inventoryOperations.quarantineLot);
  const [reason, setReason] = useState('');
  const send = () =>
    hold.mutate(
      { input: { lotId: lot.id, reason } },
      {
        onSuccess: ({ freed }) => {
          say(`${lot.code} is out of use until it is judged again.${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <LotForm
      title={`Take ${lot.code} out of use`}
      command={hold}
      submit="Into quarantine"
      onSubmit={send}
      onClose={onClose}
    >
      <p>
        {lot.reservations.length === 0
          ? 'It is promised to no kit.'
          : `These kits lose what they were promised: ${lot.reservations.map((each) => each.kitCode).join(', ')}.`}
      </p>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </LotForm>
  );
}
