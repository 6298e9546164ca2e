import type { Reply } from '@hubwright/contracts/operation';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { say } from '../../ui/toasts.tsx';
import { ShopFields } from './ShopFields.tsx';
import { draftOf, shopInput } from './shop-draft.ts';

export const shopQuery = queryFor(peopleOperations.shop, {});
export type Shop = Reply<typeof peopleOperations.shop>;

/** The profile as a form. `shop` is the version the person saw when the form opened; a newer one is refused, not overwritten. */
export function ChangeShopForm({ shop, onChanged }: { shop: Shop; onChanged: () => void }) {
  const change = useCommand(peopleOperations.changeShop);
  const [draft, setDraft] = useState(() => draftOf(shop));
  const done = () => {
    say('The shop profile is changed. New records and quotes use it.');
    onChanged();
  };
  const submit = () => change.mutate({ input: shopInput(draft), version: shop.version }, { onSuccess: done });
  return (
    <CommandForm problem={change.error} isPending={change.isPending} submit="Change the profile" onSubmit={submit}>
      <ShopFields at="" draft={draft} onChange={(changes) => setDraft({ ...draft, ...changes })} />
    </CommandForm>
  );
}
