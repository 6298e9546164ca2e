import { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Interval } from './times-as-of.ts';

/** For what never was; what was only recorded wrongly is corrected instead. */
export function WithdrawInterval({ was, onClose }: { was: Interval; onClose: () => void }) {
  const withdraw = useCommand(intervalOperations.withdrawInterval);
  const [reason, setReason] = useState('');
  const send = () =>
    withdraw.mutate(
      { input: { intervalId: was.intervalId, supersedesId: was.id, reason } },
      {
        onSuccess: () => {
          say(`The installation on ${was.aircraft.registration} counts no more.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`It was never on ${was.aircraft.registration}`} isOpen onClose={onClose}>
      <CommandForm
        problem={withdraw.error}
        isPending={withdraw.isPending}
        submit="Withdraw the installation"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          It stays on record as withdrawn and counts for nothing: no hours, no place, no due date. Where only the day or
          the figure was wrong, correct it instead.
        </p>
        <TextField name="reason" label="Why it never was" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
