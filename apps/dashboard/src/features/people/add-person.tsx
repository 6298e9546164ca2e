import { peopleOperations } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { roleChoices } from '../../format/process-words.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';

const nobody = {
  displayName: '',
  initials: '',
  signInName: '',
  email: '',
  certificateNumber: '',
  password: '',
  roles: [] as Role[],
};

/** Adds a person with a first password, which they are told in person. */
export function AddPersonForm({ onDone, onCancel }: { onDone: (personId: string) => void; onCancel: () => void }) {
  const add = useCommand(peopleOperations.addPerson);
  const [draft, setDraft] = useState(nobody);
  const set = (field: keyof typeof nobody) => (value: string) => setDraft({ ...draft, [field]: value });
  const submit = () => {
    const { displayName, initials, signInName, password, roles, ...optional } = draft;
    const given = Object.fromEntries(Object.entries(optional).filter(([, text]) => text !== ''));
    const input = { displayName, initials, signInName, password, roles, ...given };
    add.mutate(
      { input },
      {
        onSuccess: (added) => {
          say(`${draft.displayName} is added.`);
          onDone(added.id);
        },
      },
    );
  };
  return (
    <CommandForm
      problem={add.error}
      isPending={add.isPending}
      submit="Add the person"
      onSubmit={submit}
      onCancel={onCancel}
    >
      <div className="field-grid">
        <TextField
          name="displayName"
          label="Name"
          value={draft.displayName}
          onChange={set('displayName')}
          isRequired
          autoFocus
        />
        <TextField
          name="initials"
          label="Initials"
          hint="They stand beside each sign-off"
          value={draft.initials}
          onChange={set('initials')}
          isRequired
        />
        <TextField
          name="signInName"
          label="Sign-in name"
          hint="Small letters, digits, dots or dashes"
          autoComplete="off"
          isCode
          value={draft.signInName}
          onChange={set('signInName')}
          isRequired
        />
        <TextField
          name="email"
          label="E-mail"
          type="email"
          autoComplete="off"
          value={draft.email}
          onChange={set('email')}
        />
        <TextField
          name="certificateNumber"
          label="Own certificate number"
          hint="Where the authority gave them one"
          isCode
          value={draft.certificateNumber}
          onChange={set('certificateNumber')}
        />
        <PasswordField
          name="password"
          label="First password"
          hint="At least 15 characters; they replace it and choose a PIN when they first sign in"
          autoComplete="new-password"
          value={draft.password}
          onChange={set('password')}
        />
      </div>
      <CheckboxList
        name="roles"
        label="Roles"
        hint="What the person is here for; what they may sign is an authorisation, granted apart"
        value={draft.roles}
        onChange={(roles) => setDraft({ ...draft, roles })}
        choices={roleChoices}
        isRequired
      />
    </CommandForm>
  );
}
