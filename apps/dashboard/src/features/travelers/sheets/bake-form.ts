import { judgeBake, sayBake } from '@hubwright/rules/bake';
import { BakeFields } from './BakeFields.tsx';
import { type BakeDraft, bakeInput, noBake } from './bake-entry.ts';
import type { SheetForm } from './sheet-form.ts';

export const bakeForm: SheetForm<'bake', BakeDraft> = {
  empty: noBake,
  Fields: BakeFields,
  missing: 'the chart of the bake is not entered',
  entryOf(draft) {
    const entry = bakeInput(draft);
    return entry && { kind: 'bake', ...entry };
  },
  /** When the plating ended follows from the last instant at which the bake may begin. */
  judge({ startedAt, chart }, { spec, step: { startBy } }) {
    if (!startBy) return undefined;
    const bake = {
      platedAt: Date.parse(startBy) - spec.startWithinMinutes * 60_000,
      startedAt: Date.parse(startedAt),
      chart: chart.map(({ at, temperature }) => ({ at: Date.parse(at), temperature: Number(temperature) })),
      spec: { ...spec, low: Number(spec.low), high: Number(spec.high) },
    };
    const verdict = judgeBake(bake);
    return { said: sayBake(bake, verdict), reasons: verdict.reasons };
  },
};
