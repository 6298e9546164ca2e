import { queryOptions } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CheckboxList, RadioList } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { processChoices } from './process-words.ts';
import { amountDecimals, type ShopDraft } from './shop-draft.ts';

interface Props {
  draft: ShopDraft;
  onChange: (changes: Partial<ShopDraft>) => void;
  /** Where the profile stands in the command's input: `shop/` in set-up, nothing when changing it. */
  at: '' | 'shop/';
}

const zones: Found[] = Intl.supportedValuesOf('timeZone').map((zone) => ({ id: zone, name: zone }));
const currencyNames = new Intl.DisplayNames('en', { type: 'currency' });
const currencies: Found[] = Intl.supportedValuesOf('currency').map((code) => ({
  id: code,
  name: code,
  detail: currencyNames.of(code) ?? code,
}));

/** The browser's own lists, searched like the server's. */
function listed(name: string, all: readonly Found[]) {
  return (text: string) =>
    queryOptions<readonly Found[], ProblemError>({
      queryKey: ['lists', name, text],
      queryFn: () => {
        const typed = text.toLowerCase();
        return all.filter((thing) => `${thing.name} ${thing.detail ?? ''}`.toLowerCase().includes(typed)).slice(0, 60);
      },
    });
}

function pickedIn(all: readonly Found[], id: string): Found | null {
  return all.find((thing) => thing.id === id) ?? (id === '' ? null : { id, name: id });
}

function Identity({ draft, onChange, at }: Props) {
  return (
    <FieldGroup title="The shop and its certificate">
      <TextField
        name={`${at}name`}
        label="Name of the shop"
        value={draft.name}
        onChange={(name) => onChange({ name })}
        isRequired
      />
      <TextField
        name={`${at}certificateNumber`}
        label="Certificate number"
        value={draft.certificateNumber}
        onChange={(certificateNumber) => onChange({ certificateNumber })}
        isRequired
      />
      <TextField
        name={`${at}authority`}
        label="Authority"
        hint="Who issued the certificate"
        value={draft.authority}
        onChange={(authority) => onChange({ authority })}
        isRequired
      />
      <TextField
        name={`${at}ratings`}
        label="Ratings"
        hint="One a line, as the certificate words them"
        lines={3}
        value={draft.ratings}
        onChange={(ratings) => onChange({ ratings })}
        isRequired
      />
    </FieldGroup>
  );
}

function Statements({ draft, onChange, at }: Props) {
  return (
    <FieldGroup
      title="What records say"
      note="In the words your certificate and authority call for. These stand on every release record."
    >
      <TextField
        name={`${at}recordStatements/approval`}
        label="Approval statement"
        lines={4}
        value={draft.approval}
        onChange={(approval) => onChange({ approval })}
        isRequired
      />
      <TextField
        name={`${at}recordStatements/caution`}
        label="Caution line"
        hint="Printed where a mistake can hurt someone"
        lines={4}
        value={draft.caution}
        onChange={(caution) => onChange({ caution })}
        isRequired
      />
    </FieldGroup>
  );
}

function Places({ draft, onChange, at }: Props) {
  return (
    <FieldGroup title="Dates, money and measures">
      <SearchBox
        name={`${at}zone`}
        label="Time zone"
        search={listed('zones', zones)}
        found={(rows) => rows}
        picked={pickedIn(zones, draft.zone)}
        onPick={(zone) => onChange({ zone: zone?.id ?? '' })}
        isRequired
      />
      <SearchBox
        name={`${at}currency`}
        label="Currency"
        hint="Every price and quote is in it"
        search={listed('currencies', currencies)}
        found={(rows) => rows}
        picked={pickedIn(currencies, draft.currency)}
        onPick={(currency) => onChange({ currency: currency?.id ?? '' })}
        isRequired
      />
      <RadioList
        name={`${at}units`}
        label="Measures are shown in"
        value={draft.units}
        onChange={(units) => onChange({ units })}
        choices={[
          { value: 'inch', text: 'inches' },
          { value: 'metric', text: 'millimetres' },
        ]}
        isRequired
      />
    </FieldGroup>
  );
}

function Prices({ draft, onChange, at }: Props) {
  const decimals = amountDecimals(draft.currency);
  const amount = (name: string, label: string, value: string, set: (text: string) => void): ReactNode => (
    <DecimalField
      name={at + name}
      label={label}
      unit={draft.currency}
      decimals={decimals}
      value={value}
      onChange={set}
      isRequired
    />
  );
  return (
    <FieldGroup title="Quotes">
      {amount('labourRateMinor', 'Labour rate an hour', draft.labourRate, (labourRate) => onChange({ labourRate }))}
      {amount('evaluationFeeMinor', 'Evaluation fee', draft.evaluationFee, (evaluationFee) =>
        onChange({ evaluationFee }),
      )}
      <DecimalField
        name={`${at}taxPercent`}
        label="Tax"
        unit="%"
        decimals={4}
        value={draft.taxPercent}
        onChange={(taxPercent) => onChange({ taxPercent })}
        isRequired
      />
      <DecimalField
        name={`${at}quoteValidDays`}
        label="A quote is valid for"
        unit="days"
        decimals={0}
        value={draft.quoteValidDays}
        onChange={(quoteValidDays) => onChange({ quoteValidDays })}
        isRequired
      />
      <RadioList
        name={`${at}taxRounding`}
        label="Tax is rounded"
        value={draft.taxRounding}
        onChange={(taxRounding) => onChange({ taxRounding })}
        choices={[
          { value: 'line', text: 'on each line' },
          { value: 'total', text: 'once, on the total' },
        ]}
        isRequired
      />
    </FieldGroup>
  );
}

/** Every field of the shop profile, in groups. */
export function ShopFields(props: Props) {
  return (
    <>
      <Identity {...props} />
      <Statements {...props} />
      <Places {...props} />
      <Prices {...props} />
      <FieldGroup
        title="Inspecting one's own work"
        note="As a rule another person inspects. Tick only the processes where your manual allows the same person to do both; each use stays on the record."
      >
        <CheckboxList
          name={`${props.at}inspectOwnWork`}
          label="The same person may do and inspect"
          value={props.draft.inspectOwnWork}
          onChange={(inspectOwnWork) => props.onChange({ inspectOwnWork })}
          choices={processChoices}
        />
      </FieldGroup>
    </>
  );
}
