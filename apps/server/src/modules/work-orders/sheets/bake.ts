import { Problem } from '@hubwright/contracts/problems';
import { judgeBake, sayBake } from '@hubwright/rules/bake';
import type { SignedStep, Signing } from '../step-signing.ts';
import { byRule, type Judge, sheetWrong } from './judge.ts';

/**
 * A relief bake judged by its chart and by when the plating before it ended. Throws `plating-unsigned`, or `sheet-wrong` for a chart that
 * cannot be read. A late or short one is no refusal here: it is never signed as good.
 */
export const judgeBakeSheet: Judge<'bake'> = async (context, { step, spec, entry }) => {
  const platedAt = await platedBefore(context, step);
  const times = entry.chart.map(({ at }) => Date.parse(at));
  if (Math.max(Date.parse(entry.startedAt), ...times) > context.now.getTime())
    throw sheetWrong('The chart goes on into the future: sign the bake once it has ended', '/chart');
  const bake = {
    platedAt: platedAt.getTime(),
    startedAt: Date.parse(entry.startedAt),
    chart: entry.chart.map((one) => ({ at: Date.parse(one.at), temperature: Number(one.temperature) })),
    spec: { ...spec, low: Number(spec.low), high: Number(spec.high) },
  };
  const verdict = byRule(() => judgeBake(bake), '/chart');
  return { said: sayBake(bake, verdict), reasons: verdict.reasons, verdict };
};

/** When the plating that this bake relieves ended: the newest standing signature of one before it on its traveler. */
async function platedBefore({ tx }: Signing, { travelerId, sequence, title }: SignedStep): Promise<Date> {
  const plated = await tx.signOff.findFirst({
    where: {
      ...{ result: 'pass', countersignsId: null },
      step: { travelerId, process: 'plating', state: 'signed', sequence: { lt: sequence } },
    },
    orderBy: [{ step: { sequence: 'desc' } }, { signedAt: 'desc' }],
    select: { performedAt: true },
  });
  if (!plated) throw new Problem('plating-unsigned', `Nothing is signed as plated before “${title}”`);
  return plated.performedAt;
}
