import { givingBackOperations } from '@hubwright/contracts/inventory/giving-back-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm, PiecesField } from './lot-form.tsx';

/** What is held for its owner goes back to the owner. */
export function GiveBackDialog({ lot, onClose }: LotDialogProps) {
  const give = useCommand(givingBackOperations.giveBackLot);
  const [quantity, setQuantity] = useState('');
  const [reference, setReference] = useState('');
  const owner = lot.owner?.name ?? 'the owner';
  const send = () =>
    give.mutate(
      { input: { lotId: lot.id, quantity: Number(quantity || Number.NaN), reference }, version: lot.version },
      {
        onSuccess: () => {
          say(`${quantity} of ${lot.code} went back to ${owner}.`);
          onClose();
        },
      },
    );
  return (
    <LotForm
      title={`Give ${lot.code} back to ${owner}`}
      command={give}
      submit="Give them back"
      onSubmit={send}
      onClose={onClose}
    >
      <PiecesField lot={lot} value={quantity} onChange={setQuantity} />
      <TextField
        name="reference"
        label="With what paper, or who took them"
        value={reference}
        onChange={setReference}
        isRequired
      />
    </LotForm>
  );
}
