import { accessOperations } from '@hubwright/contracts/people/access-operations';
import type { Role } from '@hubwright/contracts/roles';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { roleChoices } from '../../format/process-words.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';
import { ReasonForm } from './ReasonForm.tsx';

/** Someone returns: the same person in the records, with everything they may do given anew. */
export function TakeBackForm({ person, onDone }: { person: Person; onDone: () => void }) {
  const takeBack = useCommand(accessOperations.takeBackPerson);
  const [roles, setRoles] = useState<Role[]>([]);
  const [password, setPassword] = useState('');
  const done = () => {
    say(`${person.displayName} is back. Grant their authorisations anew.`);
    onDone();
  };
  const submit = (reason: string) =>
    takeBack.mutate(
      { input: { personId: person.id, roles, password, reason }, version: person.version },
      { onSuccess: done },
    );
  return (
    <ReasonForm
      problem={takeBack.error}
      isPending={takeBack.isPending}
      submit={`Take back ${person.displayName}`}
      onSubmit={submit}
      onCancel={onDone}
    >
      <CheckboxList name="roles" label="Roles" value={roles} onChange={setRoles} choices={roleChoices} isRequired />
      <PasswordField
        name="password"
        label="First password"
        hint="At least 15 characters; they replace it when they sign in"
        autoComplete="new-password"
        value={password}
        onChange={setPassword}
      />
    </ReasonForm>
  );
}
