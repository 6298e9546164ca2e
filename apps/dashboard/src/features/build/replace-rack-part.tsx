import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Placed } from './build-sheet.ts';

/** A worn part goes out of the job: rack to scrap, and the kit needs a new one at its position. */
export function ReplaceRackPart(props: { kitId: string; lot: Placed; onClose: () => void }) {
  const replace = useCommand(kitsOperations.replaceRackPart);
  const [quantity, setQuantity] = useState('');
  const [reason, setReason] = useState('');
  const { lot } = props;
  return (
    <Dialog title={`Replace ${lot.part.number}`} isOpen onClose={props.onClose}>
      <CommandForm
        problem={replace.error}
        isPending={replace.isPending}
        submit="Take it out and ask for a new one"
        onCancel={props.onClose}
        onSubmit={() =>
          replace.mutate(
            { input: { kitId: props.kitId, lotId: lot.lotId, quantity: Number(quantity), reason } },
            {
              onSuccess: ({ held }) => {
                const where = held ? ' The old one is held for its owner.' : '';
                say(`The kit needs a new ${lot.part.number} for ${lot.position}.${where}`);
                props.onClose();
              },
            },
          )
        }
      >
        <p>
          {lot.part.description} from {lot.position}: {lot.quantity} in the rack
        </p>
        <DecimalField
          name="quantity"
          label="How many are worn"
          unit={lot.part.issueUnit}
          decimals={0}
          value={quantity}
          onChange={setQuantity}
          isRequired
        />
        <TextField name="reason" label="What is wrong with it" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
