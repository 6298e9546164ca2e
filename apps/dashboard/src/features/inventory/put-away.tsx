import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { say } from '../../ui/toasts.tsx';
import { BinField, type LotDialogProps, LotForm, PiecesField } from './lot-form.tsx';
import { onHandAt, partQuery } from './lots.ts';

/** Accepted pieces go from quarantine to their bin. */
export function PutAwayDialog({ lot, onClose }: LotDialogProps) {
  const putAway = useCommand(inventoryOperations.putAway);
  const home = useQuery(partQuery(lot.part.id)).data?.rows[0]?.homeBin ?? '';
  const [bin, setBin] = useState<string>();
  const [quantity, setQuantity] = useState(String(onHandAt(lot, 'quarantine')));
  const into = bin ?? home;
  const send = () =>
    putAway.mutate(
      { input: { lotId: lot.id, bin: into, quantity: Number(quantity) } },
      {
        onSuccess: () => {
          say(`${quantity} of ${lot.code} are in bin ${into.toUpperCase()}.`);
          onClose();
        },
      },
    );
  return (
    <LotForm title={`Put ${lot.code} away`} command={putAway} submit="Put away" onSubmit={send} onClose={onClose}>
      <div className="field-grid">
        <BinField
          name="bin"
          label="Into bin"
          hint={home ? `${lot.part.number} lives in ${home}` : undefined}
          value={into}
          onChange={setBin}
          isRequired
        />
        <PiecesField lot={lot} value={quantity} onChange={setQuantity} />
      </div>
    </LotForm>
  );
}
