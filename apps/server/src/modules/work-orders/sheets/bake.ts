import { Problem } from '@hubwright/contracts/problems';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import { judgeBake, sayBake } from '@hubwright/rules/bake';
import { bakeClockAt } from '../bake-clock.ts';
import { byRule, type Judge, type Sheet, sheetWrong } from './judge.ts';

/**
 * A relief bake judged by its chart, by when the plating before it ended and by when it went into the oven: as it is on record, or as
 * the sheet says where nobody put it down. Throws `plating-unsigned`, or `sheet-wrong` for a chart that cannot be read. A late or short
 * one is no refusal here: it is never signed as good.
 */
export const judgeBakeSheet: Judge<'bake'> = async ({ tx, now }, { step, spec, entry }) => {
  const clock = await bakeClockAt(tx, step.id);
  if (!clock) throw new Problem('plating-unsigned', `Nothing is signed as plated before “${step.title}”`);
  const startedAt = beganAt(clock, entry);
  const times = entry.chart.map(({ at }) => Date.parse(at));
  if (Math.max(startedAt, ...times) > now.getTime())
    throw sheetWrong('The chart goes on into the future: sign the bake once it has ended', '/chart');
  const bake = {
    platedAt: Date.parse(clock.platedAt),
    startedAt,
    chart: entry.chart.map((one) => ({ at: Date.parse(one.at), temperature: Number(one.temperature) })),
    spec: { ...spec, low: Number(spec.low), high: Number(spec.high) },
    unitChecked: entry.unitChecked,
  };
  const verdict = byRule(() => judgeBake(bake), '/chart');
  return {
    said: sayBake({ ...bake, begun: clock.begun ?? undefined }, verdict),
    reasons: verdict.reasons,
    verdict: { ...verdict, begun: clock.begun },
  };
};

function beganAt({ begun }: BakeClock, { startedAt }: Sheet<'bake'>['entry']): number {
  if (!begun) {
    if (startedAt === undefined) throw sheetWrong('Say when the bake began: nobody put it on record', '/startedAt');
    return Date.parse(startedAt);
  }
  if (startedAt !== undefined && Date.parse(startedAt) !== Date.parse(begun.at))
    throw sheetWrong(`It is on record as begun at ${begun.at}: withdraw that first if it is wrong`, '/startedAt');
  return Date.parse(begun.at);
}
