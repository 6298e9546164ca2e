import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { PasswordField } from '../../ui/PasswordField.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { ShopFields } from './ShopFields.tsx';
import { emptyShop, shopInput } from './shop-draft.ts';

/** The first form a shop fills: its profile and its first administrator, in one command that works once. */
export function SetUpForm({ onDone }: { onDone: () => void }) {
  const setUp = useCommand(peopleOperations.setUpShop);
  const [shop, setShop] = useState(() => emptyShop(Intl.DateTimeFormat().resolvedOptions().timeZone));
  const [administrator, setAdministrator] = useState({ displayName: '', initials: '', signInName: '', password: '' });
  const change = (changes: Partial<typeof administrator>) => setAdministrator({ ...administrator, ...changes });
  const submit = () => setUp.mutate({ input: { shop: shopInput(shop), administrator } }, { onSuccess: onDone });
  return (
    <CommandForm problem={setUp.error} isPending={setUp.isPending} submit="Set up the shop" onSubmit={submit}>
      <ShopFields at="shop/" draft={shop} onChange={(changes) => setShop({ ...shop, ...changes })} />
      <FieldGroup
        title="The first administrator"
        note="Adds the others, gives roles and authorisations. Add a second administrator soon, so that one can help the other."
      >
        <TextField
          name="administrator/displayName"
          label="Name"
          hint="As it will stand in records"
          autoComplete="name"
          value={administrator.displayName}
          onChange={(displayName) => change({ displayName })}
          isRequired
        />
        <TextField
          name="administrator/initials"
          label="Initials"
          size={6}
          value={administrator.initials}
          onChange={(initials) => change({ initials })}
          isRequired
        />
        <TextField
          name="administrator/signInName"
          label="Sign-in name"
          hint="Small letters, digits, dots or dashes"
          autoComplete="username"
          isCode
          value={administrator.signInName}
          onChange={(signInName) => change({ signInName })}
          isRequired
        />
        <PasswordField
          name="administrator/password"
          label="Password"
          hint="At least 15 characters; a few words of your own are easiest to keep"
          autoComplete="new-password"
          value={administrator.password}
          onChange={(password) => change({ password })}
        />
      </FieldGroup>
    </CommandForm>
  );
}
