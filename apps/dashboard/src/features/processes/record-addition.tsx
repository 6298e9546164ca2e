import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Caution } from '../../ui/Caution.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Equipment } from './equipment.ts';

/** What went into the bath, and how much; the next result says what it did. */
export function RecordAddition({ equipment, onClose }: { equipment: Equipment; onClose: () => void }) {
  const add = useCommand(equipmentOperations.recordAddition);
  const [what, setWhat] = useState('');
  const [amount, setAmount] = useState('');
  const [unit, setUnit] = useState('');
  return (
    <Dialog title={`Addition to ${equipment.code}`} isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Log the addition"
        onCancel={onClose}
        onSubmit={() =>
          add.mutate(
            { input: { equipmentId: equipment.id, what, amount, unit } },
            {
              onSuccess: () => {
                say(`${amount} ${unit} ${what} logged. Analyse the bath again.`);
                onClose();
              },
            },
          )
        }
      >
        <Caution>
          Bath chemicals poison and burn: only trained people, under the safety data sheet, the process specification
          and local law.
        </Caution>
        <TextField name="what" label="What was added" value={what} onChange={setWhat} isRequired />
        <DecimalField name="amount" label="How much" value={amount} onChange={setAmount} isRequired />
        <TextField name="unit" label="Unit" size={10} value={unit} onChange={setUnit} isRequired />
      </CommandForm>
    </Dialog>
  );
}
