import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { DateField } from '../../ui/DateField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type LotDialogProps, LotForm } from './lot-form.tsx';

/** The letter in which the owner gave rejected parts up. */
export function SurrenderDialog({ lot, onClose }: LotDialogProps) {
  const surrender = useCommand(handlingOperations.surrenderLot);
  const [letter, setLetter] = useState('');
  const [dated, setDated] = useState('');
  const [givenBy, setGivenBy] = useState('');
  const send = () =>
    surrender.mutate(
      { input: { lotId: lot.id, letter, dated, givenBy }, version: lot.version },
      {
        onSuccess: () => {
          say(`${lot.code} is given up: it may be destroyed before a witness.`);
          onClose();
        },
      },
    );
  return (
    <LotForm
      title={`${lot.owner?.name ?? 'The owner'} gives ${lot.code} up`}
      command={surrender}
      submit="Write it down"
      onSubmit={send}
      onClose={onClose}
    >
      <TextField
        name="letter"
        label="Letter or message"
        hint="So that it is found again"
        value={letter}
        onChange={setLetter}
        isRequired
      />
      <DateField name="dated" label="Dated" value={dated} onChange={setDated} isRequired />
      <TextField name="givenBy" label="Who signed it for the owner" value={givenBy} onChange={setGivenBy} isRequired />
    </LotForm>
  );
}
