import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { LooseItemTicks } from './LooseItems.tsx';
import type { WorkOrder } from './work-orders.ts';

export function CloseWorkOrder({ order, onClose }: { order: WorkOrder; onClose: () => void }) {
  const close = useCommand(workOrderOperations.closeWorkOrder);
  const [looseItemsReturned, setReturned] = useState<string[]>([]);
  const [note, setNote] = useState('');
  return (
    <Dialog title={`Close ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={close.error}
        isPending={close.isPending}
        submit="Close the work order"
        onCancel={onClose}
        onSubmit={() =>
          close.mutate(
            { input: { workOrderId: order.id, looseItemsReturned, note }, version: order.version },
            {
              onSuccess: () => {
                say(`${order.number} is closed.`);
                onClose();
              },
            },
          )
        }
      >
        <p>From then on the unit can be booked in again.</p>
        <LooseItemTicks
          order={order}
          name="looseItemsReturned"
          label="Went back"
          value={looseItemsReturned}
          onChange={setReturned}
        />
        <TextField name="note" label="Note" lines={2} value={note} onChange={setNote} />
      </CommandForm>
    </Dialog>
  );
}
