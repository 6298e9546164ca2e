import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import type { StandingWeight } from '@hubwright/contracts/field-balance/shapes';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { FieldBalance } from './field-balance.ts';

const fates = [
  { value: 'bin', text: 'Good: back to a bin' },
  { value: 'scrap', text: 'To scrap' },
] as const;

/** Pieces of one place that come off again. */
export function TakeOffWeights(props: { balance: FieldBalance; weight: StandingWeight; onClose: () => void }) {
  const { balance, weight, onClose } = props;
  const takeOff = useCommand(fieldBalanceOperations.takeOffFieldWeights);
  const [pieces, setPieces] = useState('');
  const [fate, setFate] = useState<'bin' | 'scrap' | null>(null);
  const [bin, setBin] = useState('');
  const [reason, setReason] = useState('');
  const send = () => {
    if (fate === null) return;
    const { place, lotCode } = weight;
    const named = { fieldBalanceId: balance.id, place, lotCode: lotCode ?? '', pieces: Number(pieces), reason };
    const done = () => {
      say(`Taken off ${place}; run again before signing.`);
      onClose();
    };
    const input = { ...named, ...(fate === 'bin' ? { bin } : {}) };
    takeOff.mutate({ input, version: balance.version }, { onSuccess: done });
  };
  return (
    <Dialog title={`Take off ${weight.place}`} isOpen onClose={onClose}>
      <CommandForm
        problem={takeOff.error}
        isPending={takeOff.isPending}
        submit="Take off"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          {weight.pieces} × {weight.partNumber} of {weight.lotCode}
        </p>
        <DecimalField name="pieces" label="Pieces" decimals={0} value={pieces} onChange={setPieces} isRequired />
        <RadioList label="What becomes of them" value={fate} onChange={setFate} choices={fates} isRequired />
        {fate === 'bin' ? (
          <TextField name="bin" label="Bin" isCode size={10} value={bin} onChange={setBin} isRequired />
        ) : null}
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
