import { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { KitLine } from './kit-detail.ts';

/** Sets promised pieces aside for this kit for good, or ends that; both with a reason. */
export function FreezeDialog({
  kitId,
  promised,
  onClose,
}: {
  kitId: string;
  promised: KitLine['reservations'][number];
  onClose: () => void;
}) {
  const isFrozen = promised.frozen !== null;
  const change = useCommand(isFrozen ? promiseOperations.unfreezeReservation : promiseOperations.freezeReservation);
  const [reason, setReason] = useState('');
  const send = () =>
    change.mutate(
      { input: { kitId, reservationId: promised.id, reason } },
      {
        onSuccess: () => {
          say(isFrozen ? `${promised.lotCode} is an ordinary promise again.` : `${promised.lotCode} is frozen.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`${isFrozen ? 'Unfreeze' : 'Freeze'} ${promised.lotCode}`} isOpen onClose={onClose}>
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit={isFrozen ? 'Unfreeze' : 'Freeze'}
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          {isFrozen
            ? 'Other kits may be given these pieces again.'
            : 'No proposal and no other kit takes these pieces until somebody unfreezes them.'}
        </p>
        <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
