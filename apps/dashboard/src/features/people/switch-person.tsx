import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import type { Me } from '../../api/me.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { useTakeOver } from './take-over.ts';

/** A badge was scanned: its person's PIN takes over this device. */
export function SwitchPersonForm({
  badge,
  onSwitched,
  onCancel,
}: {
  badge: string;
  onSwitched: (me: Me) => void;
  onCancel: () => void;
}) {
  const takeOver = useTakeOver();
  const change = useCommand(accessOperations.switchPerson);
  const [pin, setPin] = useState('');
  const submit = () => {
    change.mutate(
      { input: { badge, pin } },
      {
        onSuccess: (me) => {
          takeOver(me);
          onSwitched(me);
        },
      },
    );
    setPin('');
  };
  return (
    <CommandForm
      problem={change.error}
      isPending={change.isPending}
      submit="Take over this device"
      onSubmit={submit}
      onCancel={onCancel}
      retryField="pin"
    >
      <p>A badge was scanned. What is signed from here on carries its person’s name.</p>
      <TextField
        name="pin"
        label="PIN of this badge’s person"
        type="password"
        inputMode="numeric"
        autoComplete="off"
        value={pin}
        onChange={setPin}
        isRequired
        autoFocus
      />
    </CommandForm>
  );
}
