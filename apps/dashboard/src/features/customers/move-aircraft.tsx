import { customerOperations } from '@hubwright/contracts/customers/operations';
import { ownerOperations } from '@hubwright/contracts/customers/owner-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Aircraft } from './customers.ts';

/** An aircraft that belongs to somebody else from a day on. */
export function MoveAircraft(props: { aircraft: Aircraft; today: string; onClose: () => void }) {
  const { aircraft, onClose } = props;
  const move = useCommand(ownerOperations.moveAircraft);
  const [customer, setCustomer] = useState<Found | null>(null);
  const [on, setOn] = useState(props.today);
  const [basis, setBasis] = useState('');
  const send = () => {
    if (!customer) return;
    const input = { aircraftId: aircraft.id, fromCustomerId: aircraft.customerId, customerId: customer.id, on, basis };
    const done = () => {
      say(`${aircraft.registration} is on record with ${customer.name}.`);
      onClose();
    };
    move.mutate({ input }, { onSuccess: done });
  };
  return (
    <Dialog title={`${aircraft.registration} belongs to somebody else`} isOpen onClose={onClose}>
      <CommandForm
        problem={move.error}
        isPending={move.isPending}
        submit="Record the new owner"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          Its readings and units go with it and come due with the new owner. Work orders, letters and papers stay with
          whoever they were made for; a unit that is in the shop stays theirs who sent it.
        </p>
        <SearchBox
          name="customerId"
          label="Whose it is now"
          hint="Name or code"
          picked={customer}
          onPick={setCustomer}
          search={(text) => queryFor(customerOperations.listCustomers, { search: text, limit: 20 })}
          found={({ rows }) =>
            rows
              .filter(({ id }) => id !== aircraft.customerId)
              .map(({ id, name, code }) => ({ id, name, detail: code }))
          }
          isRequired
        />
        <DateField name="on" label="From which day on" value={on} onChange={setOn} isRequired />
        <TextField name="basis" label="Who says so" value={basis} onChange={setBasis} isRequired />
      </CommandForm>
    </Dialog>
  );
}
