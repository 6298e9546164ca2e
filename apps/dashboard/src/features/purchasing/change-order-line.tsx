import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Order, OrderItem } from './orders.ts';

/** We ask for another date or number: a new revision of the order, to be sent to the supplier. */
export function ChangeLineDialog({ order, item, onClose }: { order: Order; item: OrderItem; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(order);
  const change = useCommand(purchasingOperations.changeOrderLine);
  const [quantity, setQuantity] = useState(String(item.quantity));
  const [dueOn, setDueOn] = useState(item.dueOn);
  const [reason, setReason] = useState('');
  const send = () =>
    change.mutate(
      {
        input: { orderId: order.id, lineId: item.id, quantity: Number(quantity), dueOn, reason },
        version: seen.version,
      },
      {
        onSuccess: () => {
          say(`${item.part.number} on ${order.number} is changed.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Change ${item.part.number} on ${order.number}`} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Change the line"
        onSubmit={send}
        onCancel={onClose}
      >
        <div className="field-grid">
          <DecimalField
            name="quantity"
            label="Ordered in all"
            hint={`${item.received} have come`}
            unit={item.part.issueUnit}
            decimals={0}
            value={quantity}
            onChange={setQuantity}
            isRequired
          />
          <DateField name="dueOn" label="Due" hint="The last good day" value={dueOn} onChange={setDueOn} isRequired />
        </div>
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
