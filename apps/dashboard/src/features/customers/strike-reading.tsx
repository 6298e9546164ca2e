import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { figureOf, MeterFigure, meterWords } from '../../format/meter-words.tsx';
import { DateText } from '../../format/values.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Reading } from './Meters.tsx';

/** A reading that was a mistake stays on record and counts for nothing. */
export function StrikeReading(props: { reading: Reading; registration: string; onClose: () => void }) {
  const { reading, registration, onClose } = props;
  const strike = useCommand(meterOperations.strikeReading);
  const [reason, setReason] = useState('');
  const send = () =>
    strike.mutate(
      { input: { readingId: reading.id, reason } },
      {
        onSuccess: () => {
          say(`The reading of ${registration} counts for nothing now.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title="A reading that was a mistake" isOpen onClose={onClose}>
      <CommandForm
        problem={strike.error}
        isPending={strike.isPending}
        submit="Mark it as a mistake"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          {registration}, {meterWords[reading.meter]}: <MeterFigure meter={reading.meter} figure={figureOf(reading)} />{' '}
          on <DateText date={reading.readOn} />. It stays on record with the reason.
        </p>
        <TextField name="reason" label="Why it was a mistake" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
