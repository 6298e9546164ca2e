import { queryOptions } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { RadioList } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { amountDecimals, type ShopFieldsProps } from './shop-draft.ts';

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

/** Zone, currency and measures. */
export function ShopPlaces({ draft, onChange, at }: ShopFieldsProps) {
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

/** What quotes are made with. */
export function ShopPrices({ draft, onChange, at }: ShopFieldsProps) {
  const decimals = amountDecimals(draft.currency);
  const amount = (name: string, label: string, entry: { value: string; set: (text: string) => void }): ReactNode => (
    <DecimalField
      name={at + name}
      label={label}
      unit={draft.currency}
      decimals={decimals}
      value={entry.value}
      onChange={entry.set}
      isRequired
    />
  );
  return (
    <FieldGroup title="Quotes">
      {amount('labourRateMinor', 'Labour rate an hour', {
        value: draft.labourRate,
        set: (labourRate) => onChange({ labourRate }),
      })}
      {amount('evaluationFeeMinor', 'Evaluation fee', {
        value: draft.evaluationFee,
        set: (evaluationFee) => onChange({ evaluationFee }),
      })}
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
