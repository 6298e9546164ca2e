import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type Interval, leftEmpty, tenthsOf, wholeOf } from './times-as-of.ts';

/** Taken off its aircraft; a unit that comes in is taken off by receiving it. */
export function ReportRemoved({ was, today, onClose }: { was: Interval; today: string; onClose: () => void }) {
  const remove = useCommand(intervalOperations.reportRemoved);
  const [to, setTo] = useState(today);
  const [hours, setHours] = useState('');
  const [cycles, setCycles] = useState('');
  const [basis, setBasis] = useState('');
  const send = () =>
    remove.mutate(
      {
        input: {
          intervalId: was.intervalId,
          to,
          toTenths: tenthsOf(hours),
          ...(was.cycles ? { toCycles: wholeOf(cycles) } : {}),
          basis,
        },
      },
      {
        onSuccess: () => {
          say(`Its removal from ${was.aircraft.registration} is on record.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Off ${was.aircraft.registration}`} isOpen onClose={onClose}>
      <CommandForm
        problem={remove.error}
        isPending={remove.isPending}
        submit="Record the removal"
        onSubmit={send}
        onCancel={onClose}
      >
        <DateField name="to" label="Removed on" value={to} onChange={setTo} isRequired />
        <DecimalField
          name="toTenths"
          label="Meter at removal"
          hint={leftEmpty}
          unit="h"
          decimals={1}
          value={hours}
          onChange={setHours}
        />
        {was.cycles ? (
          <DecimalField
            name="toCycles"
            label={`${was.cycles.meter === 'landings' ? 'Landings' : 'Starts'} at removal`}
            hint={leftEmpty}
            decimals={0}
            value={cycles}
            onChange={setCycles}
          />
        ) : null}
        <TextField name="basis" label="Who says so, or which log entry" value={basis} onChange={setBasis} isRequired />
      </CommandForm>
    </Dialog>
  );
}
