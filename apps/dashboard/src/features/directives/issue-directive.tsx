import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { parseMoney } from '../../format/money.ts';
import { useShop } from '../../format/shop-context.tsx';
import { useToday } from '../../format/use-today.ts';
import { Caution } from '../../ui/Caution.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { Select } from '../../ui/Select.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type DirectiveDraft, newDraft, toSend } from './directive-draft.ts';
import { calledOf, directiveKindTitles, repeatTitles } from './directives.ts';
import { LineFields } from './line-fields.tsx';
import { OtherFields } from './other-fields.tsx';

type Set = (changes: Partial<DirectiveDraft>) => void;
const choicesOf = <V extends string>(titles: Record<V, string>) =>
  (Object.entries(titles) as [V, string][]).map(([value, text]) => ({ value, text }));
const bindings = choicesOf({ required: 'Required', recommended: 'Recommended' });

/** Puts a directive on record as it reads; signed, since units are held by it from then on. */
export function IssueDirective(props: { signer: Signer; onClose: () => void; onIssued: (id: string) => void }) {
  const { currency } = useShop();
  const [draft, setDraft] = useState(newDraft(useToday()));
  const set: Set = (changes) => setDraft({ ...draft, ...changes });
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

function NameFields({ draft, set }: { draft: DirectiveDraft; set: Set }) {
  return (
    <div className="field-grid">
      <Select
        name="kind"
        label="What it is"
        value={draft.kind}
        onChange={(kind) => set({ kind })}
        choices={choicesOf(directiveKindTitles)}
        isRequired
      />
      {draft.kind === 'service-bulletin' ? (
        <Select
          name="binding"
          label="Binding"
          value={draft.binding}
          onChange={(binding) => set({ binding })}
          choices={bindings}
          isRequired
        />
      ) : null}
      <TextField
        name="number"
        label="Number"
        value={draft.number}
        onChange={(number) => set({ number })}
        isCode
        isRequired
      />
      <TextField
        name="revision"
        label="Revision"
        value={draft.revision}
        onChange={(revision) => set({ revision })}
        isRequired
      />
      <TextField name="title" label="Title" value={draft.title} onChange={(title) => set({ title })} isRequired />
      <TextField
        name="issuer"
        label="Issued by"
        value={draft.issuer}
        onChange={(issuer) => set({ issuer })}
        isRequired
      />
      <DateField
        name="issuedOn"
        label="Issued on"
        value={draft.issuedOn}
        onChange={(issuedOn) => set({ issuedOn })}
        isRequired
      />
      <DateField
        name="effectiveOn"
        label="In force from"
        value={draft.effectiveOn}
        onChange={(effectiveOn) => set({ effectiveOn })}
        isRequired
      />
    </div>
  );
}

function OftenFields({ draft, set }: { draft: DirectiveDraft; set: Set }) {
  const { currency } = useShop();
  return (
    <div className="field-grid">
      <Select
        name="repeats"
        label="How often"
        value={draft.repeats}
        onChange={(repeats) => set({ repeats })}
        choices={choicesOf(repeatTitles)}
        isRequired
      />
      {draft.repeats === 'recurring' ? (
        <>
          <DecimalField
            name="everyHoursTenths"
            label="Every"
            unit="h"
            decimals={1}
            value={draft.hours}
            onChange={(hours) => set({ hours })}
          />
          <DecimalField
            name="everyMonths"
            label="Or every, whichever comes first"
            unit="months"
            decimals={0}
            value={draft.months}
            onChange={(months) => set({ months })}
            after={
              <Checkbox isSelected={draft.endOfMonth} onChange={(endOfMonth) => set({ endOfMonth })}>
                to the month’s end
              </Checkbox>
            }
          />
          <TextField
            name="terminatingAction"
            label="What ends it for good"
            value={draft.terminatingAction}
            onChange={(terminatingAction) => set({ terminatingAction })}
          />
        </>
      ) : null}
      <DecimalField
        name="deferDays"
        label="May be put off by at most"
        hint="Empty where it allows none"
        unit="days"
        decimals={0}
        value={draft.deferDays}
        onChange={(deferDays) => set({ deferDays })}
      />
      <DecimalField
        name="labourMinor"
        label="Our price for each part it concerns"
        unit={currency}
        decimals={2}
        value={draft.price}
        onChange={(price) => set({ price })}
      />
    </div>
  );
}
