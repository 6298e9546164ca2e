import { customerOperations } from '@hubwright/contracts/customers/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type CustomerDraft, CustomerFields, newCustomer } from './customer-fields.tsx';

export function AddCustomer({ onClose, onAdded }: { onClose: () => void; onAdded: (customerId: string) => void }) {
  const add = useCommand(customerOperations.addCustomer);
  const [code, setCode] = useState('');
  const [draft, setDraft] = useState(newCustomer);
  const set = (changes: Partial<CustomerDraft>) => setDraft({ ...draft, ...changes });
  const input = { ...draft, acceptedSources: [...draft.acceptedSources], code };
  return (
    <Dialog title="Add a customer" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the customer"
        onCancel={onClose}
        onSubmit={() => add.mutate({ input }, { onSuccess: ({ id }) => onAdded(id) })}
      >
        <TextField
          name="code"
          label="Code"
          hint="Short, for labels: 2 to 12 letters, digits or dashes"
          size={14}
          value={code}
          onChange={setCode}
          isCode
          isRequired
        />
        <CustomerFields draft={draft} set={set} />
      </CommandForm>
    </Dialog>
  );
}
