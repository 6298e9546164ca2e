import { durationWords } from '../../../format/step-words.ts';
import { InstantText } from '../../../format/values.tsx';
import { StateMark } from '../../../ui/StateMark.tsx';
import { TextField } from '../../../ui/TextField.tsx';
import type { BakeDraft } from './bake-entry.ts';
import type { SheetFieldsProps } from './sheet-form.ts';

/** When the bake began and what the oven charted. */
export function BakeFields({ about, draft, onChange }: SheetFieldsProps<'bake', BakeDraft>) {
  const { low, high, unit, minimumMinutes } = about.spec;
  const { startBy } = about.step;
  return (
    <>
      <p>
        {durationWords(minimumMinutes)} within {low} to {high} {unit}.{' '}
        {startBy ? (
          <strong>
            To begin by <InstantText instant={startBy} />
          </strong>
        ) : (
          <StateMark state="hold" word="nothing is signed as plated yet" />
        )}
      </p>
      <TextField
        name="sheet/startedAt"
        label="The bake began"
        type={'datetime-local' as 'text'}
        value={draft.startedAt}
        onChange={(startedAt) => onChange({ ...draft, startedAt })}
        isRequired
      />
      <TextField
        name="sheet/chart"
        label="The oven’s chart"
        hint="A line each: date, time, temperature, such as 2026-03-01 12:20 350"
        lines={6}
        value={draft.chart}
        onChange={(chart) => onChange({ ...draft, chart })}
        isRequired
      />
    </>
  );
}
