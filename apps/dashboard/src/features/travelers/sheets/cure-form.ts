import { judgeCure, sayCure } from '@hubwright/rules/cure';
import { type ChartDraft, noChart } from './ChartField.tsx';
import { CureFields } from './CureFields.tsx';
import { chartFrom, readingsOf } from './chart-text.ts';
import type { SheetForm } from './sheet-form.ts';

export const cureForm: SheetForm<'cure', ChartDraft> = {
  empty: noChart,
  Fields: CureFields,
  missing: 'the chart of the cure is not entered',
  entryOf({ chart: text, unitChecked }) {
    const chart = chartFrom(text);
    if (!chart || chart.length < 2) return undefined;
    return { kind: 'cure', chart, ...(unitChecked ? { unitChecked: true as const } : {}) };
  },
  /** What was out of the freezer too long is told beside it, and judged when it is signed. */
  judge({ chart, unitChecked }, { spec: { vacuum, ...spec } }) {
    const readings = readingsOf(chart);
    const verdict = judgeCure({
      ...{ chart: readings, unitChecked },
      spec: {
        ...spec,
        ...{ low: Number(spec.low), high: Number(spec.high), coolTo: Number(spec.coolTo) },
        ...{ heatUpMost: Number(spec.heatUpMost), coolDownMost: Number(spec.coolDownMost) },
        ...(vacuum ? { vacuum: { ...vacuum, least: Number(vacuum.least) } } : {}),
      },
    });
    const [startedAt, endedAt] = [readings[0]?.at ?? 0, readings.at(-1)?.at ?? 0];
    return { said: sayCure({ startedAt, endedAt }, verdict), reasons: verdict.reasons };
  },
};
