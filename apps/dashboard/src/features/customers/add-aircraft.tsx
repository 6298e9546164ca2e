import { customerOperations } from '@hubwright/contracts/customers/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

export function AddAircraft({ customerId, onClose }: { customerId: string; onClose: () => void }) {
  const add = useCommand(customerOperations.addAircraft);
  const [registration, setRegistration] = useState('');
  const [airframe, setAirframe] = useState('');
  const [engine, setEngine] = useState('');
  return (
    <Dialog title="Add an aircraft" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the aircraft"
        onCancel={onClose}
        onSubmit={() =>
          add.mutate(
            { input: { customerId, registration, airframe, engine } },
            {
              onSuccess: () => {
                say(`${registration.toUpperCase()} is added.`);
                onClose();
              },
            },
          )
        }
      >
        <TextField
          name="registration"
          label="Registration"
          size={12}
          value={registration}
          onChange={setRegistration}
          isCode
          isRequired
        />
        <TextField name="airframe" label="Airframe" value={airframe} onChange={setAirframe} isRequired />
        <TextField name="engine" label="Engine" value={engine} onChange={setEngine} isRequired />
      </CommandForm>
    </Dialog>
  );
}
