import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { holdWords } from './order-words.ts';
import type { WorkOrder } from './work-orders.ts';

export type Hold = WorkOrder['allHolds'][number];

export function LiftHold({ hold, onClose }: { hold: Hold; onClose: () => void }) {
  const lift = useCommand(workOrderOperations.liftHold);
  const [reason, setReason] = useState('');
  return (
    <Dialog title="Lift the hold" isOpen onClose={onClose}>
      <CommandForm
        problem={lift.error}
        isPending={lift.isPending}
        submit="Lift it"
        onCancel={onClose}
        onSubmit={() =>
          lift.mutate(
            { input: { holdId: hold.id, reason } },
            {
              onSuccess: () => {
                say('The hold is lifted.');
                onClose();
              },
            },
          )
        }
      >
        <p>
          {holdWords[hold.kind]}: {hold.reason}
        </p>
        <TextField name="reason" label="What settles it" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
