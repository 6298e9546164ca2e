import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { roleChoices } from '../../format/process-words.ts';
import { Checkbox, CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';

/** Name, own certificate, roles, and whether the account is on. `person` is as seen when the form opened. */
export function ChangePersonForm({
  person,
  onDone,
  onCancel,
}: {
  person: Person;
  onDone: () => void;
  onCancel: () => void;
}) {
  const change = useCommand(peopleOperations.changePerson);
  const [draft, setDraft] = useState({
    displayName: person.displayName,
    certificateNumber: person.certificateNumber ?? '',
    roles: person.roles,
    active: person.active,
  });
  const certificateNumber = draft.certificateNumber.trim() || null;
  const submit = () =>
    change.mutate(
      { input: { personId: person.id, ...draft, certificateNumber }, version: person.version },
      {
        onSuccess: () => {
          say(`${draft.displayName} is changed.`);
          onDone();
        },
      },
    );
  return (
    <CommandForm
      problem={change.error}
      isPending={change.isPending}
      submit="Change the person"
      onSubmit={submit}
      onCancel={onCancel}
    >
      <TextField
        name="displayName"
        label="Name"
        value={draft.displayName}
        onChange={(displayName) => setDraft({ ...draft, displayName })}
        isRequired
      />
      <TextField
        name="certificateNumber"
        label="Own certificate number"
        hint="Copied into each release they sign, where the authority asks for it"
        isCode
        value={draft.certificateNumber}
        onChange={(number) => setDraft({ ...draft, certificateNumber: number })}
      />
      <CheckboxList
        name="roles"
        label="Roles"
        value={draft.roles}
        onChange={(roles) => setDraft({ ...draft, roles })}
        choices={roleChoices}
        isRequired
      />
      <Checkbox isSelected={draft.active} onChange={(active) => setDraft({ ...draft, active })}>
        The account is on
      </Checkbox>
      {person.active && !draft.active ? (
        <p className="soft small">Their sessions end at once. What they signed stays as it is.</p>
      ) : null}
    </CommandForm>
  );
}
