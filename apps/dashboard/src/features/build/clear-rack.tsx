import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

const places = [
  { value: 'scrap', text: 'Scrap' },
  { value: 'customer', text: 'Back to the customer, who owns them' },
  { value: 'held', text: 'Held as the customer’s, until they give them up' },
] as const;

/** Old parts that do not go back leave the rack together. */
export function ClearRack({ kitId, onClose }: { kitId: string; onClose: () => void }) {
  const clear = useCommand(kitsOperations.clearRack);
  const [to, setTo] = useState<(typeof places)[number]['value'] | null>(null);
  const [reason, setReason] = useState('');
  return (
    <Dialog title="Clear the rack of what does not go back" isOpen onClose={onClose}>
      <CommandForm
        problem={clear.error}
        isPending={clear.isPending}
        submit="Clear the rack"
        onCancel={onClose}
        onSubmit={() =>
          clear.mutate(
            { input: { kitId, to: to as 'scrap', reason } },
            {
              onSuccess: (reply) => {
                const held = reply.held > 0 ? ` ${countOf(reply.held, 'piece')} held for their owner.` : '';
                say(`${countOf(reply.cleared, 'piece')} left the rack.${held}`);
                onClose();
              },
            },
          )
        }
      >
        <p className="small">
          What has a serial or a limited life is never scrapped from here: it is held for its owner, and destroyed
          before a witness once the owner gave it up.
        </p>
        <RadioList name="to" label="Where to" value={to} onChange={setTo} choices={places} isRequired />
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
