import { trayOperations } from '@hubwright/contracts/kits/tray-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { TrayLot } from './kit-detail.ts';
import { useOldBin } from './return-from-tray.tsx';

/** Another lot takes the place of this one in the tray: one goes back and the other comes in, both or neither. */
export function SwapDialog({ kitId, lot, onClose }: { kitId: string; lot: TrayLot; onClose: () => void }) {
  const swap = useCommand(trayOperations.swapLot);
  const oldBin = useOldBin(kitId, lot);
  const [draft, setDraft] = useState({ newLotCode: '', quantity: String(lot.quantity), reason: '' });
  const [bin, setBin] = useState<string>();
  const put = (key: keyof typeof draft) => (text: string) => setDraft({ ...draft, [key]: text });
  const send = () =>
    swap.mutate(
      {
        input: {
          ...{ kitId, lotCode: lot.lotCode, newLotCode: draft.newLotCode },
          ...{ bin: bin ?? oldBin ?? '', quantity: Number(draft.quantity), reason: draft.reason },
        },
      },
      {
        onSuccess: ({ lotCode }) => {
          say(`${lotCode} is in the tray in place of ${lot.lotCode}.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Swap ${lot.lotCode} for another lot`} isOpen onClose={onClose}>
      <CommandForm
        problem={swap.error}
        isPending={swap.isPending}
        submit="Swap the lots"
        onSubmit={send}
        onCancel={onClose}
      >
        <div className="field-grid">
          <TextField
            name="newLotCode"
            label="Lot that comes in"
            value={draft.newLotCode}
            onChange={put('newLotCode')}
            isCode
            isRequired
          />
          <DecimalField
            name="quantity"
            label="How many"
            unit={lot.part.issueUnit}
            decimals={0}
            value={draft.quantity}
            onChange={put('quantity')}
            isRequired
          />
          <TextField
            name="bin"
            label={`${lot.lotCode} goes back into bin`}
            value={bin ?? oldBin ?? ''}
            onChange={setBin}
            isCode
            isRequired
          />
          <TextField name="reason" label="Why" value={draft.reason} onChange={put('reason')} isRequired />
        </div>
      </CommandForm>
    </Dialog>
  );
}
