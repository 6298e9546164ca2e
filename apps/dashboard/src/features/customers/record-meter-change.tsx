import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import type { Meter } from '@hubwright/contracts/customers/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { meterChoices, parseFigure, typedAs } from '../../format/meter-words.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Aircraft } from './customers.ts';

/** A meter was replaced: what the old one showed last, if anybody wrote it down, and the new one first. */
export function RecordMeterChange(props: { aircraft: Aircraft; today: string; onClose: () => void }) {
  const { aircraft, onClose } = props;
  const record = useCommand(meterOperations.recordMeterChange);
  const [meter, setMeter] = useState<Meter | null>(null);
  const [changedOn, setChangedOn] = useState(props.today);
  const [hours, setHours] = useState({ old: '', new: '' });
  const [basis, setBasis] = useState('');
  const kind = meter ?? 'tachometer';
  const input = {
    ...{ aircraftId: aircraft.id, meter: meter as Meter, changedOn, basis },
    oldTenths: hours.old === '' ? ('unknown' as const) : (parseFigure(kind, hours.old) ?? Number.NaN),
    newTenths: parseFigure(kind, hours.new) ?? Number.NaN,
  };
  const done = () => {
    say(`The new meter of ${aircraft.registration} is on record.`);
    onClose();
  };
  const { unit, decimals } = typedAs(kind);
  const figure = { unit, decimals };
  return (
    <Dialog title={`A meter of ${aircraft.registration} was replaced`} isOpen onClose={onClose}>
      <CommandForm
        problem={record.error}
        isPending={record.isPending}
        submit="Record the new meter"
        onSubmit={() => record.mutate({ input }, { onSuccess: done })}
        onCancel={onClose}
      >
        <Select name="meter" label="Which meter" value={meter} onChange={setMeter} choices={meterChoices} isRequired />
        <DateField name="changedOn" label="Replaced on" value={changedOn} onChange={setChangedOn} isRequired />
        <DecimalField
          {...{ ...figure, name: 'oldTenths', label: 'The old one showed last', value: hours.old }}
          hint="Left empty where nobody wrote it down; what was flown across the change is not known then."
          onChange={(old) => setHours((now) => ({ ...now, old }))}
        />
        <DecimalField
          {...{ ...figure, name: 'newTenths', label: 'The new one showed first', value: hours.new }}
          onChange={(first) => setHours((now) => ({ ...now, new: first }))}
          isRequired
        />
        <TextField name="basis" label="Who says so, or which log entry" value={basis} onChange={setBasis} isRequired />
      </CommandForm>
    </Dialog>
  );
}
