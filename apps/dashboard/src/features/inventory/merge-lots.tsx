import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm } from './lot-form.tsx';

/** Two labels for the same thing become one; what differs in any respect is refused, with what it is. */
export function MergeDialog({ lot, onClose }: LotDialogProps) {
  const merge = useCommand(handlingOperations.mergeLots);
  const lots = useQuery(queryFor(inventoryOperations.listLots, { partId: lot.part.id, limit: 200 })).data?.rows ?? [];
  const others = lots.filter(({ id, state, onHand }) => id !== lot.id && state === lot.state && onHand > 0);
  const [intoId, setIntoId] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const into = others.find(({ id }) => id === intoId);
  const send = () =>
    merge.mutate(
      { input: { lotId: lot.id, intoId: intoId ?? '', reason }, version: lot.version },
      {
        onSuccess: ({ quantity }) => {
          say(`${quantity} of ${lot.code} are now ${into?.code}: label them anew.`);
          onClose();
        },
      },
    );
  return (
    <LotForm title={`Merge ${lot.code}`} command={merge} submit="Merge them" onSubmit={send} onClose={onClose}>
      {others.length === 0 ? <p>There is no other lot of {lot.part.number} in that state.</p> : null}
      <Select
        name="intoId"
        label="Under which lot"
        placeholder="Choose the lot that stays"
        value={intoId}
        onChange={setIntoId}
        choices={others.map(({ id, code, onHand, place }) => ({ value: id, text: `${code} (${onHand} in ${place})` }))}
        isRequired
      />
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </LotForm>
  );
}
