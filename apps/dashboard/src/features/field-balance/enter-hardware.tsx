import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { say } from '../../ui/toasts.tsx';

/** What one piece of a part weighs. */
export function EnterHardware({ onClose }: { onClose: () => void }) {
  const enter = useCommand(fieldBalanceOperations.enterBalanceHardware);
  const [part, setPart] = useState<Found | null>(null);
  const [mass, setMass] = useState('');
  const send = () =>
    part &&
    enter.mutate(
      { input: { partId: part.id, mass } },
      {
        onSuccess: () => {
          say(`${part.name} serves as a balance weight of ${mass} g.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title="What a piece weighs" isOpen onClose={onClose}>
      <CommandForm problem={enter.error} isPending={enter.isPending} submit="Say so" onSubmit={send} onCancel={onClose}>
        <SearchBox
          name="partId"
          label="Part"
          picked={part}
          onPick={setPart}
          search={(text) => queryFor(partOperations.listParts, { search: text, limit: 20 })}
          found={({ rows }) => rows.map(({ id, number, description }) => ({ id, name: number, detail: description }))}
          isRequired
        />
        <DecimalField
          name="mass"
          label="One piece weighs"
          unit="g"
          decimals={3}
          value={mass}
          onChange={setMass}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
