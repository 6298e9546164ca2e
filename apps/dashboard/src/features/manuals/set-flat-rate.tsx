import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { type Scope, scopes, scopeTitles } from '@hubwright/contracts/manuals/words';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { parseMoney } from '../../format/money.ts';
import { useShop } from '../../format/shop-context.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import type { ModelDetail } from './manuals.ts';

const choices = scopes.map((value) => ({ value, text: scopeTitles[value] }));

/** The labour of a scope as every quote of this model begins with it. */
export function SetFlatRate({ model, onClose }: { model: ModelDetail; onClose: () => void }) {
  const { currency } = useShop();
  const set = useCommand(manualOperations.setFlatRate);
  const [scope, setScope] = useState<Scope | null>(null);
  const [hours, setHours] = useState('');
  const [price, setPrice] = useState('');
  const input = {
    modelId: model.id,
    scope: scope as Scope,
    labourMinutes: hours === '' ? Number.NaN : Math.round(Number(hours) * 60),
    labourMinor: parseMoney(price, currency) ?? Number.NaN,
  };
  const send = () =>
    set.mutate(
      { input },
      {
        onSuccess: () => {
          say(`The flat rate of ${model.designation} is set.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Flat rate of ${model.designation}`} isOpen onClose={onClose}>
      <CommandForm
        problem={set.error}
        isPending={set.isPending}
        submit="Set the flat rate"
        onSubmit={send}
        onCancel={onClose}
      >
        <Select
          name="scope"
          label="What is asked for"
          placeholder="Choose"
          value={scope}
          onChange={setScope}
          choices={choices}
          isRequired
        />
        <DecimalField
          name="labourMinutes"
          label="Labour"
          unit="h"
          decimals={2}
          value={hours}
          onChange={setHours}
          isRequired
        />
        <DecimalField
          name="labourMinor"
          label="Price of it"
          unit={currency}
          decimals={2}
          value={price}
          onChange={setPrice}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
