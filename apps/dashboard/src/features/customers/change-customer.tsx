import { customerOperations } from '@hubwright/contracts/customers/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { say } from '../../ui/toasts.tsx';
import { type CustomerDraft, CustomerFields } from './customer-fields.tsx';
import type { Customer } from './customers.ts';

function ChangeForm({ customer, onClose }: { customer: Customer; onClose: () => void }) {
  const change = useCommand(customerOperations.changeCustomer);
  const { name, contactName, email, phone, address, acceptedSources } = customer;
  const [draft, setDraft] = useState<CustomerDraft>({ name, contactName, email, phone, address, acceptedSources });
  const [unpaidHold, setUnpaidHold] = useState(customer.unpaidHold);
  const input = { ...draft, acceptedSources: [...draft.acceptedSources], customerId: customer.id, unpaidHold };
  return (
    <CommandForm
      problem={change.error}
      isPending={change.isPending}
      submit="Change it"
      onCancel={onClose}
      onSubmit={() =>
        change.mutate(
          { input, version: customer.version },
          {
            onSuccess: () => {
              say(`${draft.name} is changed.`);
              onClose();
            },
          },
        )
      }
    >
      <CustomerFields draft={draft} set={(changes) => setDraft({ ...draft, ...changes })} />
      <Checkbox isSelected={unpaidHold} onChange={setUnpaidHold}>
        Has unpaid bills: nothing leaves without a reason
      </Checkbox>
    </CommandForm>
  );
}

export function ChangeCustomer({ customer, onClose }: { customer: Customer; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(customer);
  return (
    <Dialog title={`Change ${seen.name}`} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <ChangeForm key={seen.version} customer={seen} onClose={onClose} />
    </Dialog>
  );
}
