import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Which } from './bake-actions.tsx';

/** It did not go into the oven then: the deadline runs on as if nothing had been said, and the reason stays. */
export function WithdrawBake({ which, name, onClose }: { which: Which; name: string; onClose: () => void }) {
  const withdraw = useCommand(bakeOperations.withdrawBake);
  const [reason, setReason] = useState('');
  return (
    <Dialog title={`${name}: not in the oven after all`} isOpen onClose={onClose}>
      <CommandForm
        problem={withdraw.error}
        isPending={withdraw.isPending}
        submit="Withdraw it"
        onCancel={onClose}
        onSubmit={() =>
          withdraw.mutate(
            { input: { ...which, reason } },
            {
              onSuccess: () => {
                say('Withdrawn: its deadline runs on.');
                onClose();
              },
            },
          )
        }
      >
        <p>The deadline of the bake runs on from its plating, as if nothing had been entered.</p>
        <TextField name="reason" label="Why, in one line" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
