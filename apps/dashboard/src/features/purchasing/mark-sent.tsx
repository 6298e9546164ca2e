import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useCommand } from '../../api/command.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Order } from './orders.ts';

/** A person sends the paper; this says that it went. */
export function SentDialog({ order, onClose }: { order: Order; onClose: () => void }) {
  const sent = useCommand(orderOperations.markSent);
  const [how, setHow] = useState('');
  const send = () =>
    sent.mutate(
      { input: { orderId: order.id, how }, version: order.version },
      {
        onSuccess: () => {
          say(`Revision ${order.revision} of ${order.number} went to ${order.supplier.name}.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`${order.number}, revision ${order.revision}, went out`} isOpen onClose={onClose}>
      <CommandForm
        problem={sent.error}
        isPending={sent.isPending}
        submit="It was sent"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>Hubwright sends nothing by itself. Send the paper to {order.supplier.name}, then say how it went.</p>
        <p>
          <LinkButton href={addressOf(orderOperations.orderPdf, { orderId: order.id })} target="_blank">
            Open the paper
          </LinkButton>
        </p>
        <TextField
          name="how"
          label="How it was sent"
          hint="E-mail, phone, their site"
          value={how}
          onChange={setHow}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
