import { DecimalField } from '../../ui/DecimalField.tsx';
import type { DirectiveDraft, FirstDraft } from './directive-draft.ts';

const fields = [
  { key: 'days', name: 'firstDays', label: 'Days after it is in force', unit: 'days', decimals: 0 },
  { key: 'months', name: 'firstMonths', label: 'Months after it is in force', unit: 'months', decimals: 0 },
  { key: 'hours', name: 'firstHoursTenths', label: 'Hours flown after it is in force', unit: 'h', decimals: 1 },
  { key: 'total', name: 'firstTotalTenths', label: 'Total hours since new', unit: 'h', decimals: 1 },
] as const;

/** Until when it may wait for the first time; all empty where it is due as soon as it is in force. */
export function FirstFields({
  draft,
  set,
}: {
  draft: DirectiveDraft;
  set: (changes: Partial<DirectiveDraft>) => void;
}) {
  if (draft.repeats === 'at-overhaul') return null;
  const put = (key: keyof FirstDraft, text: string) => set({ first: { ...draft.first, [key]: text } });
  return (
    <fieldset className="stack tight">
      <legend>First to be done within, whichever comes first</legend>
      <p className="small soft">Leave all empty where it is due as soon as it is in force.</p>
      <div className="field-grid">
        {fields.map(({ key, ...field }) => (
          <DecimalField key={key} {...field} value={draft.first[key]} onChange={(text) => put(key, text)} />
        ))}
      </div>
    </fieldset>
  );
}
