import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { formatDate } from '../../format/dates.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkOrder } from './work-orders.ts';

/** A day promised to the customer, or moved; the reason stays on record. An empty day takes the promise back. */
export function SetPromise({ order, onClose }: { order: WorkOrder; onClose: () => void }) {
  const promise = useCommand(workOrderOperations.setPromise);
  const [promisedOn, setPromisedOn] = useState(order.promisedOn ?? '');
  const [reason, setReason] = useState('');
  return (
    <Dialog title={`Promise for ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={promise.error}
        isPending={promise.isPending}
        submit={promisedOn === '' ? 'Take the promise back' : 'Promise this day'}
        onCancel={onClose}
        onSubmit={() =>
          promise.mutate(
            {
              input: { workOrderId: order.id, promisedOn: promisedOn === '' ? null : promisedOn, reason },
              version: order.version,
            },
            {
              onSuccess: () => {
                say(promisedOn === '' ? 'No day is promised any more.' : `Promised for ${formatDate(promisedOn)}.`);
                onClose();
              },
            },
          )
        }
      >
        <DateField
          name="promisedOn"
          label="Ready to ship on"
          hint="The last good day; empty takes the promise back"
          value={promisedOn}
          onChange={setPromisedOn}
        />
        <TextField
          name="reason"
          label="Why this day"
          hint="Who was told, or what moved it"
          value={reason}
          onChange={setReason}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
