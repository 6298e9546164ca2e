import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

const empty = { code: '', name: '', email: '', phone: '', approvedUntil: '' };

/** A supplier, and the last day its approval is good for. */
export function AddSupplierDialog({ onClose }: { onClose: () => void }) {
  const add = useCommand(supplierOperations.addSupplier);
  const mayApprove = useMay(approvalOperations.approveSupplier);
  const [draft, setDraft] = useState(empty);
  const put = (key: keyof typeof empty) => (text: string) => setDraft({ ...draft, [key]: text });
  const send = () => {
    const { approvedUntil, ...rest } = draft;
    add.mutate(
      { input: { ...rest, ...(approvedUntil === '' ? {} : { approvedUntil }) } },
      {
        onSuccess: () => {
          say(`${draft.name} can be ordered from${approvedUntil === '' ? ' once it is approved' : ''}.`);
          onClose();
        },
      },
    );
  };
  return (
    <Dialog title="Add a supplier" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the supplier"
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField
          name="code"
          label="Code"
          hint="2 to 12 letters, digits or dashes"
          value={draft.code}
          onChange={put('code')}
          isCode
          isRequired
        />
        <TextField name="name" label="Name" value={draft.name} onChange={put('name')} isRequired />
        <TextField name="email" label="E-mail" value={draft.email} onChange={put('email')} />
        <TextField name="phone" label="Phone" value={draft.phone} onChange={put('phone')} />
        {mayApprove ? (
          <DateField
            name="approvedUntil"
            label="Approved until"
            hint="The last good day; without it nothing can be ordered there"
            value={draft.approvedUntil}
            onChange={put('approvedUntil')}
          />
        ) : (
          <p>A manager or inspector approves it; until then nothing can be ordered there.</p>
        )}
      </CommandForm>
    </Dialog>
  );
}
