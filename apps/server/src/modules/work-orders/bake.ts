import type { BakeSpec } from '@hubwright/contracts/manuals/measures';
import { Problem } from '@hubwright/contracts/problems';
import { type BakeVerdict, judgeBake } from '@hubwright/rules/bake';
import { RuleError } from '@hubwright/rules/errors';
import type { SignedStep, Signing } from './step-signing.ts';

export interface BakeEntry {
  readonly startedAt: string;
  readonly chart: readonly { readonly at: string; readonly temperature: string }[];
}

/** A bake as it is signed: what was asked, what the chart showed, and what it says. */
export interface Baked extends BakeEntry {
  readonly spec: BakeSpec;
  readonly platedAt: string;
  readonly verdict: BakeVerdict;
}

/**
 * A relief bake judged by its chart and by when the plating before it ended; undefined where the step is none. Throws `bake-missing`,
 * `bake-wrong` or `plating-unsigned`. A late or short one is no refusal here: it is never signed as good.
 */
export async function bakedOf(
  context: Signing,
  step: SignedStep,
  entry: BakeEntry | undefined,
): Promise<Baked | undefined> {
  if (step.bake === null) return undefined;
  if (!entry)
    throw new Problem('bake-missing', `“${step.title}” is signed with its chart`, {}, [
      { pointer: '/bake', detail: 'Enter the beginning and the chart' },
    ]);
  const spec = step.bake as unknown as BakeSpec;
  const platedAt = await platedBefore(context, step);
  refuseFuture(context, entry);
  const at = (instant: string) => Date.parse(instant);
  try {
    const verdict = judgeBake({
      ...{ platedAt: platedAt.getTime(), startedAt: at(entry.startedAt) },
      chart: entry.chart.map((one) => ({ at: at(one.at), temperature: Number(one.temperature) })),
      spec: { ...spec, low: Number(spec.low), high: Number(spec.high) },
    });
    return { ...entry, spec, platedAt: platedAt.toISOString(), verdict };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw new Problem('bake-wrong', error.message, {}, [{ pointer: '/bake/chart', detail: error.message }]);
  }
}

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

function refuseFuture({ now }: Signing, { chart, startedAt }: BakeEntry): void {
  const last = Math.max(Date.parse(startedAt), ...chart.map(({ at }) => Date.parse(at)));
  if (last <= now.getTime()) return;
  throw new Problem('bake-wrong', 'The chart goes on into the future', {}, [
    { pointer: '/bake/chart', detail: 'Sign the bake once it has ended' },
  ]);
}
