import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { VendorOrder } from './vendors.ts';

/** The vendor's new promise; the old one stays in the record with the reason. */
export function ChangeExpected({ order, onClose }: { order: VendorOrder; onClose: () => void }) {
  const change = useCommand(vendorOperations.changeExpected);
  const [expectedOn, setExpectedOn] = useState('');
  const [reason, setReason] = useState('');
  return (
    <Dialog title={`New promise for ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Write it down"
        onCancel={onClose}
        onSubmit={() =>
          change.mutate(
            { input: { orderId: order.id, expectedOn, reason }, version: order.version },
            {
              onSuccess: () => {
                say(`${order.number} has a new day.`);
                onClose();
              },
            },
          )
        }
      >
        <DateField name="expectedOn" label="Expected back" value={expectedOn} onChange={setExpectedOn} isRequired />
        <TextField name="reason" label="What the vendor said" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
