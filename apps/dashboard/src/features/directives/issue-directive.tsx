import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { parseMoney } from '../../format/money.ts';
import { useShop } from '../../format/shop-context.tsx';
import { useToday } from '../../format/use-today.ts';
import { Caution } from '../../ui/Caution.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type DirectiveDraft, newDraft, toSend } from './directive-draft.ts';
import { NameFields, OftenFields } from './directive-fields.tsx';
import { calledOf } from './directives.ts';
import { FirstFields } from './first-fields.tsx';
import { LineFields } from './line-fields.tsx';
import { OtherFields } from './other-fields.tsx';

/** Puts a directive on record as it reads; signed, since units are held by it from then on. */
export function IssueDirective(props: { signer: Signer; onClose: () => void; onIssued: (id: string) => void }) {
  const { currency } = useShop();
  const [draft, setDraft] = useState(newDraft(useToday()));
  const set = (changes: Partial<DirectiveDraft>) => setDraft({ ...draft, ...changes });
  const input = toSend(draft, parseMoney(draft.price, currency));
  const signing = input && {
    op: directiveOperations.issueDirective,
    input,
    signer: props.signer,
    onSigned: ({ id }: { id: string }) => {
      say(`${calledOf(draft)} is on record; units it concerns are held by it from now on.`);
      props.onIssued(id);
    },
    summary: (
      <p>
        {calledOf(draft)} of {draft.issuer}, {draft.title}: {draft.action}
      </p>
    ),
  };
  return (
    <FormThenSign title="Put a directive on record" width="wide" onClose={props.onClose} signing={signing}>
      <Caution>
        Enter it word for word. Where a directive and a maker’s document differ, the directive holds; whether it
        concerns a unit is for an inspector to say wherever the record cannot.
      </Caution>
      <NameFields draft={draft} set={set} />
      <OftenFields draft={draft} set={set} />
      <FirstFields draft={draft} set={set} />
      <TextField
        name="action"
        label="What it asks"
        lines={3}
        value={draft.action}
        onChange={(action) => set({ action })}
        isRequired
      />
      <LineFields lines={draft.lines} onChange={(lines) => set({ lines })} />
      <OtherFields others={draft.others} onChange={(others) => set({ others })} />
    </FormThenSign>
  );
}
