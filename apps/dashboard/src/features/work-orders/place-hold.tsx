import { type Role, roles, roleTitles } from '@hubwright/contracts/roles';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { type HoldKind, holdKinds } from '@hubwright/contracts/work-orders/states';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { holdWords } from './order-words.ts';

/** Stops work for a named reason, until someone of the named role lifts it. */
export function PlaceHold({ order, onClose }: { order: { id: string; number: string }; onClose: () => void }) {
  const place = useCommand(workOrderOperations.placeHold);
  const [kind, setKind] = useState<HoldKind | null>(null);
  const [reason, setReason] = useState('');
  const [liftedByRole, setRole] = useState<Role | null>(null);
  const input = { workOrderId: order.id, kind: kind as HoldKind, reason, liftedByRole: liftedByRole as Role };
  return (
    <Dialog title={`Hold ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={place.error}
        isPending={place.isPending}
        submit="Place the hold"
        onCancel={onClose}
        onSubmit={() =>
          place.mutate(
            { input },
            {
              onSuccess: () => {
                say(`${order.number} is on hold.`);
                onClose();
              },
            },
          )
        }
      >
        <Select
          name="kind"
          label="What it waits for"
          value={kind}
          onChange={setKind}
          choices={holdKinds.map((value) => ({ value, text: holdWords[value] }))}
          isRequired
        />
        <TextField name="reason" label="Why, in one line" value={reason} onChange={setReason} isRequired />
        <Select
          name="liftedByRole"
          label="Who may lift it"
          value={liftedByRole}
          onChange={setRole}
          choices={roles.map((value) => ({ value, text: roleTitles[value] }))}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
