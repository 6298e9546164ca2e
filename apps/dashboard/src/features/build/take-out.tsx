import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { SheetLine } from './build-sheet.ts';

/** What was put in comes out again: unused to the tray, reused to the rack, or to scrap. */
export function TakeOut(props: { line: SheetLine; lot: SheetLine['lots'][number]; onClose: () => void }) {
  const takeOut = useCommand(kitsOperations.takeOut);
  const { line, lot, onClose } = props;
  const [quantity, setQuantity] = useState('');
  const [to, setTo] = useState<'back' | 'scrap' | null>(null);
  const [reason, setReason] = useState('');
  const places = [
    { value: 'back', text: lot.from === 'new' ? 'Back to the tray, unused' : 'Back to the rack' },
    { value: 'scrap', text: 'Scrap' },
  ] as const;
  const input = { kitId: line.kitId, lineId: line.lineId, lotCode: lot.lotCode, quantity: Number(quantity), reason };
  return (
    <Dialog title={`Take ${line.part.number} out of ${line.position}`} isOpen onClose={onClose}>
      <CommandForm
        problem={takeOut.error}
        isPending={takeOut.isPending}
        submit="Take it out"
        onCancel={onClose}
        onSubmit={() =>
          takeOut.mutate(
            { input: { ...input, to: to as 'back' } },
            {
              onSuccess: () => {
                say(`${line.part.number} is out of ${line.position}.`);
                onClose();
              },
            },
          )
        }
      >
        <DecimalField
          name="quantity"
          label="How many come out"
          hint={`${quantityText(lot.quantity, line.part.issueUnit)} of ${lot.lotCode} are in`}
          unit={line.part.issueUnit}
          decimals={0}
          value={quantity}
          onChange={setQuantity}
          isRequired
        />
        <RadioList name="to" label="Where to" value={to} onChange={setTo} choices={places} isRequired />
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
