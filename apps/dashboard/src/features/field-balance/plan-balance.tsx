import { customerOperations } from '@hubwright/contracts/customers/operations';
import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

/** Whose, which aircraft, which propeller, where and when. */
export function PlanBalance({ onClose }: { onClose: () => void }) {
  const plan = useCommand(fieldBalanceOperations.planFieldBalance);
  const [customer, setCustomer] = useState<Found | null>(null);
  const [aircraftId, setAircraft] = useState<string | null>(null);
  const [unit, setUnit] = useState<Found | null>(null);
  const [words, setWords] = useState({ airport: '', plannedOn: '', reason: '' });
  const set = (name: keyof typeof words) => (text: string) => setWords({ ...words, [name]: text });
  const shown = useQuery({
    ...queryFor(customerOperations.showCustomer, { customerId: customer?.id ?? '' }),
    enabled: customer !== null,
  }).data;
  const send = () => {
    if (!customer || !aircraftId || !unit) return;
    const input = { customerId: customer.id, aircraftId, unitId: unit.id, ...words };
    plan.mutate(
      { input },
      {
        onSuccess: ({ number }) => {
          say(`${number} is planned.`);
          onClose();
        },
      },
    );
  };
  return (
    <Dialog title="Plan a balance on the aircraft" isOpen onClose={onClose} width="wide">
      <CommandForm problem={plan.error} isPending={plan.isPending} submit="Plan it" onSubmit={send} onCancel={onClose}>
        <SearchBox
          name="customerId"
          label="Customer"
          picked={customer}
          onPick={(thing) => {
            setCustomer(thing);
            setAircraft(null);
          }}
          search={(text) => queryFor(customerOperations.listCustomers, { search: text, limit: 20 })}
          found={({ rows }) => rows.map(({ id, name, code }) => ({ id, name, detail: code }))}
          isRequired
        />
        <Select
          name="aircraftId"
          label="Aircraft"
          placeholder={customer ? 'Choose' : 'Choose the customer first'}
          value={aircraftId}
          onChange={setAircraft}
          choices={(shown?.aircraft ?? []).map(({ id, registration, airframe }) => ({
            value: id,
            text: `${registration}, ${airframe}`,
          }))}
          isRequired
        />
        <SearchBox
          name="unitId"
          label="Propeller that is installed"
          hint="Serial as on the hub"
          picked={unit}
          onPick={setUnit}
          search={(text) => ({
            ...queryFor(unitOperations.find, { text: text || '-', limit: 20 }),
            enabled: text !== '',
          })}
          found={({ rows }) =>
            rows.filter(({ kind }) => kind === 'unit').map(({ id, title, detail }) => ({ id, name: title, detail }))
          }
          isRequired
        />
        <TextField name="airport" label="Where" value={words.airport} onChange={set('airport')} isRequired />
        <DateField name="plannedOn" label="Planned on" value={words.plannedOn} onChange={set('plannedOn')} isRequired />
        <TextField name="reason" label="Why" lines={2} value={words.reason} onChange={set('reason')} isRequired />
      </CommandForm>
    </Dialog>
  );
}
