import { type UseCategory, useCategories, useTitles } from '@hubwright/contracts/manuals/service-limits';
import { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Keeping } from './keeping.ts';

const notSaid = 'not-said';
const choices = [
  { value: notSaid, text: 'Not known' },
  ...useCategories.map((value) => ({ value, text: useTitles[value] })),
];

/** What the owner says of its use; the manual may give other times for it. */
export function SayUse({ itemId, known, onClose }: { itemId: string; known: Keeping; onClose: () => void }) {
  const command = useCommand(keepingOperations.sayUse);
  const [use, setUse] = useState<string>(known.use ?? notSaid);
  const [madeOn, setMadeOn] = useState(known.madeOn ?? '');
  const [basis, setBasis] = useState('');
  const send = () =>
    command.mutate(
      {
        input: {
          ...{ itemId, basis },
          ...(use === notSaid ? {} : { use: use as UseCategory }),
          ...(madeOn === '' ? {} : { madeOn }),
        },
      },
      {
        onSuccess: () => {
          say('Its use and age are on record; its due date goes by them.');
          onClose();
        },
      },
    );
  return (
    <Dialog title="Use and age" isOpen onClose={onClose}>
      <CommandForm
        problem={command.error}
        isPending={command.isPending}
        submit="Put on record"
        onSubmit={send}
        onCancel={onClose}
      >
        <Select
          name="use"
          label="Used for"
          hint="While it is not known the strictest time counts"
          value={use}
          onChange={setUse}
          choices={choices}
        />
        <DateField name="madeOn" label="Made on" value={madeOn} onChange={setMadeOn} />
        <TextField name="basis" label="Who said so, or which paper" value={basis} onChange={setBasis} isRequired />
      </CommandForm>
    </Dialog>
  );
}
