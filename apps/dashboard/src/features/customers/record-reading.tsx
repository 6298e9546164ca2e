import { customerOperations, type Meter } from '@hubwright/contracts/customers/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { meterChoices, parseFigure, typedAs } from '../../format/meter-words.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Aircraft } from './customers.ts';

/** What a meter read on a day; due dates follow it. */
export function RecordReading(props: { aircraft: Aircraft; today: string; onClose: () => void }) {
  const { aircraft, onClose } = props;
  const record = useCommand(customerOperations.recordReading);
  const [meter, setMeter] = useState<Meter | null>(null);
  const [readOn, setReadOn] = useState(props.today);
  const [hours, setHours] = useState('');
  const { name, unit, decimals } = typedAs(meter ?? 'tachometer');
  const input = {
    aircraftId: aircraft.id,
    readOn,
    meter: meter as Meter,
    [name]: parseFigure(meter ?? 'tachometer', hours) ?? Number.NaN,
  };
  return (
    <Dialog title={`Reading of ${aircraft.registration}`} isOpen onClose={onClose}>
      <CommandForm
        problem={record.error}
        isPending={record.isPending}
        submit="Record the reading"
        onCancel={onClose}
        onSubmit={() =>
          record.mutate(
            { input },
            {
              onSuccess: () => {
                say(`The reading of ${aircraft.registration} is recorded.`);
                onClose();
              },
            },
          )
        }
      >
        <Select name="meter" label="Which meter" value={meter} onChange={setMeter} choices={meterChoices} isRequired />
        <DateField name="readOn" label="Read on" value={readOn} onChange={setReadOn} isRequired />
        <DecimalField
          name={name}
          label="It read"
          unit={unit}
          decimals={decimals}
          value={hours}
          onChange={setHours}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
