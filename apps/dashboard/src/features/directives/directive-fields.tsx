import { useShop } from '../../format/shop-context.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { DirectiveDraft } from './directive-draft.ts';
import { directiveKindTitles, repeatTitles } from './directives.ts';

type Set = (changes: Partial<DirectiveDraft>) => void;
const choicesOf = <V extends string>(titles: Record<V, string>) =>
  (Object.entries(titles) as [V, string][]).map(([value, text]) => ({ value, text }));
const bindings = choicesOf({ required: 'Required', recommended: 'Recommended' });

export function NameFields({ draft, set }: { draft: DirectiveDraft; set: Set }) {
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

export function OftenFields({ draft, set }: { draft: DirectiveDraft; set: Set }) {
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
        </>
      ) : null}
      {draft.repeats === 'one-time' ? null : (
        <TextField
          name="terminatingAction"
          label="What ends it for good"
          value={draft.terminatingAction}
          onChange={(terminatingAction) => set({ terminatingAction })}
        />
      )}
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
