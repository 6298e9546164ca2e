import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

export interface Promised {
  readonly reservationId: string;
  readonly lotCode: string;
  readonly quantity: number;
}

/** Gives promised pieces free again, so that another kit can have them. */
export function ReleaseDialog({
  kitId,
  promised,
  onClose,
}: {
  kitId: string;
  promised: Promised;
  onClose: () => void;
}) {
  const release = useCommand(kitsOperations.releaseReservation);
  const [reason, setReason] = useState('');
  const send = () =>
    release.mutate(
      { input: { kitId, reservationId: promised.reservationId, reason } },
      {
        onSuccess: () => {
          say(`${promised.quantity} of ${promised.lotCode} are free again.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Give ${promised.lotCode} free`} isOpen onClose={onClose}>
      <CommandForm
        problem={release.error}
        isPending={release.isPending}
        submit={`Give ${promised.quantity} free`}
        onSubmit={send}
        onCancel={onClose}
      >
        <p>The pieces stay in their bin; this kit then lacks them until they are promised again.</p>
        <TextField name="reason" label="Reason" value={reason} onChange={setReason} />
      </CommandForm>
    </Dialog>
  );
}
