import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Order } from './orders.ts';

/** Nothing more is expected on the order; what has come stays. The kits it was to serve are short again. */
export function CancelOrderDialog({ order, onClose }: { order: Order; onClose: () => void }) {
  const cancel = useCommand(purchasingOperations.cancelOrder);
  const [reason, setReason] = useState('');
  const send = () =>
    cancel.mutate(
      { input: { orderId: order.id, reason }, version: order.version },
      {
        onSuccess: () => {
          say(`Nothing more is expected on ${order.number}.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Cancel what is open on ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={cancel.error}
        isPending={cancel.isPending}
        submit="Cancel what is open"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>Kits that were to get their parts from this order will be short of them at once. Tell the supplier too.</p>
        <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
