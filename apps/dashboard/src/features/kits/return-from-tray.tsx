import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { TrayLot } from './kit-detail.ts';

/** Where the pieces were pulled from, as far as the newest movements tell. */
export function useOldBin(kitId: string, lot: TrayLot): string | undefined {
  const answer = useQuery(queryFor(inventoryOperations.listMovements, { kitId, lotId: lot.lotId, limit: 20 }));
  return answer.data?.rows.find((row) => row.to.kind === 'tray' && row.from.kind === 'bin')?.from.ref;
}

/** Unused pieces go from the tray back to a bin, usually the one they came from. */
export function ReturnDialog({ kitId, lot, onClose }: { kitId: string; lot: TrayLot; onClose: () => void }) {
  const giveBack = useCommand(kitsOperations.returnFromTray);
  const oldBin = useOldBin(kitId, lot);
  const [bin, setBin] = useState<string>();
  const [quantity, setQuantity] = useState(String(lot.quantity));
  const send = () =>
    giveBack.mutate(
      { input: { kitId, lotCode: lot.lotCode, bin: bin ?? oldBin ?? '', quantity: Number(quantity) } },
      {
        onSuccess: () => {
          say(`${quantity} of ${lot.lotCode} are back in their bin.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Bring ${lot.lotCode} back`} isOpen onClose={onClose}>
      <CommandForm
        problem={giveBack.error}
        isPending={giveBack.isPending}
        submit="Bring back to the bin"
        onSubmit={send}
        onCancel={onClose}
      >
        <div className="field-grid">
          <DecimalField
            name="quantity"
            label="How many"
            unit={lot.part.issueUnit}
            decimals={0}
            value={quantity}
            onChange={setQuantity}
            isRequired
          />
          <TextField
            name="bin"
            label="Into bin"
            hint={oldBin ? `Pulled from ${oldBin}` : 'As it stands on the bin'}
            value={bin ?? oldBin ?? ''}
            onChange={setBin}
            isCode
            isRequired
          />
        </div>
      </CommandForm>
    </Dialog>
  );
}
