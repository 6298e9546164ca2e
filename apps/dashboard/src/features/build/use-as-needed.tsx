import { quantityText } from '@hubwright/contracts/inventory/quantity';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import type { SheetLine } from './build-sheet.ts';

/** Safety wire, grease, sealant and shims are used as needed, between limits: the builder says how much went in. */
export function UseAsNeeded(props: { line: SheetLine; lotCode: string; onClose: () => void }) {
  const install = useCommand(kitsOperations.installFromTray);
  const [quantity, setQuantity] = useState('');
  const { line, lotCode, onClose } = props;
  const { issueUnit } = line.part;
  return (
    <Dialog title={`How much went in at ${line.position}?`} isOpen onClose={onClose}>
      <CommandForm
        problem={install.error}
        isPending={install.isPending}
        submit="Record what was used"
        onCancel={onClose}
        onSubmit={() =>
          install.mutate(
            { input: { kitId: line.kitId, lineId: line.lineId, lotCode, quantity: Number(quantity) } },
            {
              onSuccess: () => {
                say(`${quantityText(Number(quantity), issueUnit)} of ${line.part.number} used at ${line.position}.`);
                onClose();
              },
            },
          )
        }
      >
        <DecimalField
          name="quantity"
          label={`${line.part.description}, ${lotCode}`}
          hint={`${line.minimum} to ${quantityText(line.required, issueUnit)}; ${line.installed} in already, ${line.inTray} in the tray`}
          unit={issueUnit}
          decimals={0}
          value={quantity}
          onChange={setQuantity}
          isRequired
          autoFocus
        />
      </CommandForm>
    </Dialog>
  );
}
