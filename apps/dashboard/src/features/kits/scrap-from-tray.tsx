import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { DestroyFromTray } from './destroy-from-tray.tsx';
import type { TrayLot } from './kit-detail.ts';

/** Damaged or dropped pieces leave the tray for good; the kit then needs new ones. */
export function ScrapFromTrayDialog({ kitId, lot, onClose }: { kitId: string; lot: TrayLot; onClose: () => void }) {
  const scrap = useCommand(kitsOperations.scrapFromTray);
  const [quantity, setQuantity] = useState('');
  const [reason, setReason] = useState('');
  if (scrap.error?.type === 'witness-needed')
    return <DestroyFromTray kitId={kitId} lot={lot} given={{ quantity, reason }} onClose={onClose} />;
  const send = () =>
    scrap.mutate(
      { input: { kitId, lotCode: lot.lotCode, quantity: Number(quantity), reason } },
      {
        onSuccess: () => {
          say(`${quantity} of ${lot.lotCode} are scrapped; the kit needs new ones.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Scrap pieces of ${lot.lotCode}`} isOpen onClose={onClose}>
      <CommandForm
        problem={scrap.error}
        isPending={scrap.isPending}
        submit="Scrap them"
        onSubmit={send}
        onCancel={onClose}
      >
        <DecimalField
          name="quantity"
          label="How many"
          hint={`${lot.quantity} in the tray`}
          unit={lot.part.issueUnit}
          decimals={0}
          value={quantity}
          onChange={setQuantity}
          isRequired
        />
        <TextField name="reason" label="What happened to them" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
