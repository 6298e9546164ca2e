import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import { durationWords } from '../../../format/step-words.ts';
import { TextField } from '../../../ui/TextField.tsx';
import { type ChartDraft, ChartField } from './ChartField.tsx';

/** A bake as it is being written down. */
export interface BakeDraft extends ChartDraft {
  readonly startedAt: string;
}

interface BakeChartProps {
  readonly spec: SheetOf<'bake'>;
  readonly clock: BakeClock | null;
  readonly draft: BakeDraft;
  readonly onChange: (draft: BakeDraft) => void;
}

/** What the oven charted, and when the bake began where nobody put that on record. */
export function BakeChart({ spec, clock, draft, onChange }: BakeChartProps) {
  const { low, high, unit, minimumMinutes } = spec;
  return (
    <>
      <p>
        {durationWords(minimumMinutes)} within {low} to {high} {unit}; the chart is signed once it has ended.
      </p>
      {clock?.begun ? null : (
        <TextField
          name="sheet/startedAt"
          label="The bake began"
          hint="Only where it was not put down at the oven"
          type={'datetime-local' as 'text'}
          value={draft.startedAt}
          onChange={(startedAt) => onChange({ ...draft, startedAt })}
          isRequired
        />
      )}
      <ChartField
        label="The oven’s chart"
        title="The oven’s chart against its band"
        asked={spec}
        draft={draft}
        onChange={(chart) => onChange({ ...draft, ...chart })}
      />
    </>
  );
}
