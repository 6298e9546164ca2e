import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import { judgeBake, sayBake } from '@hubwright/rules/bake';
import type { BakeDraft } from './BakeChart.tsx';
import { BakeFields } from './BakeFields.tsx';
import { noChart } from './ChartField.tsx';
import { chartFrom, readingsOf } from './chart-text.ts';
import type { SheetForm, SheetVerdict } from './sheet-form.ts';

export const noBake: BakeDraft = { ...noChart, startedAt: '' };

/** The entry as the command takes it; undefined while it cannot be read. When it began is left out where that is on record. */
export function bakeEntryOf(draft: BakeDraft, clock: BakeClock | null): EntryOf<'bake'> | undefined {
  const chart = chartFrom(draft.chart)?.map(({ at, temperature }) => ({ at, temperature }));
  if (!chart || chart.length < 2) return undefined;
  const entry = { kind: 'bake' as const, chart, ...(draft.unitChecked ? { unitChecked: true as const } : {}) };
  if (clock?.begun) return entry;
  return Number.isNaN(Date.parse(draft.startedAt))
    ? undefined
    : { ...entry, startedAt: new Date(draft.startedAt).toISOString() };
}

/** By the plating of one part, which each part of a load has of its own; undefined before it is plated. */
export function bakeVerdict(
  { startedAt, chart, unitChecked }: EntryOf<'bake'>,
  { spec, clock }: { spec: SheetOf<'bake'>; clock: BakeClock | null },
): SheetVerdict | undefined {
  const began = clock?.begun?.at ?? startedAt;
  if (!clock || began === undefined) return undefined;
  const bake = {
    ...{ platedAt: Date.parse(clock.platedAt), startedAt: Date.parse(began), chart: readingsOf(chart), unitChecked },
    spec: { ...spec, low: Number(spec.low), high: Number(spec.high) },
  };
  const verdict = judgeBake(bake);
  return { said: sayBake({ ...bake, begun: clock.begun ?? undefined }, verdict), reasons: verdict.reasons };
}

export const bakeForm: SheetForm<'bake', BakeDraft> = {
  empty: noBake,
  Fields: BakeFields,
  missing: 'the chart of the bake is not entered',
  entryOf: (draft, { step }) => bakeEntryOf(draft, step.bake),
  judge: (entry, { spec, step }) => bakeVerdict(entry, { spec, clock: step.bake }),
};
