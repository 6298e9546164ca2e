import { isDeepStrictEqual } from 'node:util';
import { Problem } from '@hubwright/contracts/problems';
import { RuleError } from '@hubwright/rules/errors';
import { type AcceptedPoint, acceptedPoints, type BenchDoubt } from '@hubwright/rules/governor';
import type { GuardBandMethod } from '@hubwright/rules/measurement';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { contentOf } from './program.ts';

/** How readings of a run are accepted where the shop asks for a guard band: frozen when it begins, so that all of it goes by one rule. */
export interface RunAcceptance {
  readonly method: Exclude<GuardBandMethod, 'none'>;
  readonly points: readonly AcceptedPoint[];
}

interface AcceptedRun {
  readonly id: string;
  readonly number: string;
  readonly benchId: string;
  readonly program: { readonly content: unknown };
  /** As it was frozen. */
  readonly accepted: unknown;
}
interface Bench {
  readonly tag: string;
  readonly uncertainty: string | null;
  readonly unit: string | null;
  readonly moreDoubts: unknown;
}

/** By the shop's setting and what the bench is known to today; null where the manual's limits count. Throws `doubt-unknown` or `instrument-too-coarse`. */
export async function acceptanceFor(
  tx: Pick<Tx, 'shopProfile' | 'instrument'>,
  { program, benchId }: Pick<AcceptedRun, 'program' | 'benchId'>,
): Promise<RunAcceptance | null> {
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { guardBand: true } });
  const method = (shop?.guardBand ?? 'none') as GuardBandMethod;
  if (method === 'none') return null;
  const bench = found(await tx.instrument.findUnique({ where: { id: benchId } }), 'This bench');
  try {
    return { method, points: acceptedPoints(contentOf({ program }).points, doubtsOf(bench), method) };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    const type = error.code === 'doubt-unknown' ? 'doubt-unknown' : 'instrument-too-coarse';
    throw new Problem(type, `${bench.tag}: ${error.message}`, { instrument: bench.tag });
  }
}

/** Throws `acceptance-changed` where the run began by another guard band, or with a bench known to something else, than today. */
export async function refuseOtherAcceptance(tx: Tx, run: AcceptedRun): Promise<void> {
  if (isDeepStrictEqual(acceptanceOf(run), await acceptanceFor(tx, run))) return;
  const was = acceptanceOf(run) ? 'inside the limits by a guard band of then' : 'by the limits of the manual';
  throw new Problem('acceptance-changed', `Readings of ${run.number} were accepted ${was}`, { runId: run.id });
}

export function acceptanceOf({ accepted }: Pick<AcceptedRun, 'accepted'>): RunAcceptance | null {
  return accepted as RunAcceptance | null;
}

/** What a point's reading is accepted by in this run; undefined where it is the manual's limits. */
export function acceptedAt(run: Pick<AcceptedRun, 'accepted'>, name: string): AcceptedPoint | undefined {
  return acceptanceOf(run)?.points.find(({ point }) => point === name);
}

function doubtsOf({ uncertainty, unit, moreDoubts }: Bench): BenchDoubt[] {
  const own = uncertainty !== null && unit !== null ? [{ uncertainty, unit }] : [];
  return [...own, ...(moreDoubts as BenchDoubt[])];
}
