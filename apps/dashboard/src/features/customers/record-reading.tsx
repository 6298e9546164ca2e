import { customerOperations, type Meter } from '@hubwright/contracts/customers/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { meterChoices } from '../../format/meter-words.ts';
import { parseHours } from '../../format/numbers.ts';
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
  const tenths = parseHours(hours);
  const input = {
    aircraftId: aircraft.id,
    readOn,
    meter: meter as Meter,
    hoursTenths: typeof tenths === 'number' ? tenths : Number.NaN,
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
          name="hoursTenths"
          label="It read"
          unit="h"
          decimals={1}
          value={hours}
          onChange={setHours}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
