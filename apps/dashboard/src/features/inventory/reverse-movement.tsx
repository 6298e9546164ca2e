import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Movement } from './lots.ts';
import { freedWords } from './stock-words.ts';

/** Undoes a movement by its mirror image: both stay in the ledger. */
export function ReverseDialog({ movement, onClose }: { movement: Movement; onClose: () => void }) {
  const reverse = useCommand(inventoryOperations.reverseMovement);
  const [reason, setReason] = useState('');
  const send = () =>
    reverse.mutate(
      { input: { movementId: movement.id, reason } },
      {
        onSuccess: ({ freed }) => {
          say(`${movement.quantity} of ${movement.lotCode} are where they were.${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <Dialog title="Undo a movement" isOpen onClose={onClose}>
      <CommandForm
        problem={reverse.error}
        isPending={reverse.isPending}
        submit="Undo it"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          {movement.quantity} of <span className="code">{movement.lotCode}</span> go back from {movement.to.title} to{' '}
          {movement.from.title}. Both movements stay in the ledger.
        </p>
        <TextField name="reason" label="Why it was wrong" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
