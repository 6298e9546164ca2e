import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Supplier } from './suppliers.ts';

/** Approve until a day, or end the approval by leaving the day empty. */
export function ApproveDialog({ supplier, onClose }: { supplier: Supplier; onClose: () => void }) {
  const approve = useCommand(approvalOperations.approveSupplier);
  const [until, setUntil] = useState('');
  const [basis, setBasis] = useState('');
  const send = () =>
    approve.mutate(
      {
        input: { supplierId: supplier.id, approvedUntil: until === '' ? null : until, basis },
        version: supplier.version,
      },
      {
        onSuccess: () => {
          say(until === '' ? `${supplier.name} is approved no more.` : `${supplier.name} is approved.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Approve ${supplier.name}`} isOpen onClose={onClose}>
      <CommandForm
        problem={approve.error}
        isPending={approve.isPending}
        submit={until === '' ? 'End the approval' : 'Approve'}
        onSubmit={send}
        onCancel={onClose}
      >
        <DateField
          name="approvedUntil"
          label="Approved until"
          hint="The last good day; empty ends the approval"
          value={until}
          onChange={setUntil}
        />
        <TextField
          name="basis"
          label="On what ground"
          hint="The audit, its report, or what went wrong"
          lines={2}
          value={basis}
          onChange={setBasis}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}

/** Order and receive all the same, for a while and for a reason. */
export function AllowDialog(props: {
  supplier: Pick<Supplier, 'id' | 'name'>;
  /** The one order it is for; for every order without. */
  order?: { readonly id: string; readonly number: string };
  standing: string;
  onClose: () => void;
}) {
  const { supplier, order, onClose } = props;
  const allow = useCommand(approvalOperations.allowSupplier);
  const [goodUntil, setGoodUntil] = useState('');
  const [reason, setReason] = useState('');
  const send = () =>
    allow.mutate(
      { input: { supplierId: supplier.id, ...(order ? { orderId: order.id } : {}), goodUntil, reason } },
      {
        onSuccess: () => {
          say(
            order
              ? `${order.number} may be received until the exception ends.`
              : `${supplier.name} may be ordered from until the exception ends.`,
          );
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Allow ${order?.number ?? supplier.name} by exception`} isOpen onClose={onClose}>
      <CommandForm
        problem={allow.error}
        isPending={allow.isPending}
        submit="Allow it"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>{props.standing} Your name and reason stand beside every order that rests on this.</p>
        <DateField
          name="goodUntil"
          label="Until"
          hint="At most 90 days away"
          value={goodUntil}
          onChange={setGoodUntil}
          isRequired
        />
        <TextField name="reason" label="Reason" lines={2} value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
