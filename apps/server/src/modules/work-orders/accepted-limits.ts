import { Problem } from '@hubwright/contracts/problems';
import { RuleError } from '@hubwright/rules/errors';
import { acceptance, type GuardBandMethod } from '@hubwright/rules/measurement';
import type { Tx } from '../../platform/database/client.ts';
import type { MeasureAsked } from './judge-values.ts';

/** What readings were accepted by: said in the signature where the shop's rule narrows the manual's limits. */
export interface Accepted {
  readonly measures: readonly MeasureAsked[];
  readonly rule: { readonly method: GuardBandMethod; readonly uncertainty: string; readonly unit: string } | null;
}

type Instrument = { readonly tag: string; readonly uncertainty: string | null; readonly unit: string | null };

/**
 * The limits readings with an instrument are accepted by: the manual's or, where the shop asks for a guard band, inside them by the doubt
 * of the instrument. Throws `doubt-unknown` or `instrument-too-coarse`.
 */
export async function acceptedLimits(
  tx: Tx,
  measures: readonly MeasureAsked[],
  instrument: Instrument | undefined,
): Promise<Accepted> {
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { guardBand: true } });
  const method = (shop?.guardBand ?? 'none') as GuardBandMethod;
  if (method === 'none' || !instrument || measures.length === 0) return { measures, rule: null };
  const { uncertainty, unit, tag } = instrument;
  if (uncertainty === null || unit === null)
    throw new Problem('doubt-unknown', `The uncertainty of ${tag} is not on record`, { instrument: tag });
  return {
    measures: measures.map((one) => narrowed(one, { uncertainty, unit, tag }, method)),
    rule: { method, uncertainty, unit },
  };
}

function narrowed(
  measure: MeasureAsked,
  { tag, ...doubt }: { tag: string; uncertainty: string; unit: string },
  method: GuardBandMethod,
): MeasureAsked {
  try {
    const { low, high, isNarrowed } = acceptance(measure, doubt, method);
    // One place finer, as the limits are: a reading rounded to the manual’s own place could hide half of it.
    return { ...measure, low, high, decimals: measure.decimals + (isNarrowed ? 1 : 0) };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw new Problem('instrument-too-coarse', `${tag} for ${measure.name}: ${error.message}`, { instrument: tag });
  }
}
