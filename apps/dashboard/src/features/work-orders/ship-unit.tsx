import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkOrder } from './work-orders.ts';

export function ShipUnit({ order, onClose }: { order: WorkOrder; onClose: () => void }) {
  const ship = useCommand(workOrderOperations.shipUnit);
  const [carrier, setCarrier] = useState('');
  const [reference, setReference] = useState('');
  return (
    <Dialog title={`Ship ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={ship.error}
        isPending={ship.isPending}
        submit="It left the house"
        onCancel={onClose}
        onSubmit={() =>
          ship.mutate(
            { input: { workOrderId: order.id, carrier, reference }, version: order.version },
            {
              onSuccess: () => {
                say(`${order.number} is shipped.`);
                onClose();
              },
            },
          )
        }
      >
        <TextField
          name="carrier"
          label="Carrier"
          hint="Or who picked it up"
          value={carrier}
          onChange={setCarrier}
          isRequired
        />
        <TextField name="reference" label="Tracking or waybill" value={reference} onChange={setReference} isCode />
      </CommandForm>
    </Dialog>
  );
}
