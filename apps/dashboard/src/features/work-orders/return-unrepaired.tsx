import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkOrder } from './work-orders.ts';

/** The customer takes the unit back although work was agreed, as after a no to what was found later. */
export function ReturnUnrepaired({ order, onClose }: { order: WorkOrder; onClose: () => void }) {
  const back = useCommand(workOrderOperations.returnUnrepaired);
  const [decidedByName, setName] = useState('');
  const [reason, setReason] = useState('');
  return (
    <Dialog title={`${order.number} goes back unrepaired`} isOpen onClose={onClose}>
      <CommandForm
        problem={back.error}
        isPending={back.isPending}
        submit="End the work"
        onCancel={onClose}
        onSubmit={() =>
          back.mutate(
            { input: { workOrderId: order.id, decidedByName, reason }, version: order.version },
            {
              onSuccess: () => {
                say(`${order.number} goes back unrepaired; every piece is tagged before it leaves.`);
                onClose();
              },
            },
          )
        }
      >
        <p>Work ends here. Parts promised to its kit are free at once; offers without an answer are withdrawn.</p>
        <TextField
          name="decidedByName"
          label="Who decided, at the customer"
          value={decidedByName}
          onChange={setName}
          isRequired
        />
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
