import { Problem } from '@hubwright/contracts/problems';
import { RuleError } from '@hubwright/rules/errors';
import type { GuardBandMethod } from '@hubwright/rules/measurement';
import type { Tx } from '../../../platform/database/client.ts';
import type { UsedInstrument } from './judge.ts';

type Doubt = { readonly uncertainty: string; readonly unit: string } | null;

/**
 * Limits of a sheet as the shop accepts readings with this instrument: those of the manual or, where it asks for a guard band, inside
 * them. Throws `doubt-unknown` or `instrument-too-coarse`.
 */
export async function acceptedBy<T>(
  tx: Tx,
  instrument: UsedInstrument | undefined,
  narrowed: (doubt: Doubt, method: GuardBandMethod) => T,
): Promise<T> {
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { guardBand: true } });
  const method = (shop?.guardBand ?? 'none') as GuardBandMethod;
  if (method === 'none' || !instrument) return narrowed(null, 'none');
  const { uncertainty, unit, tag } = instrument;
  if (uncertainty === null || unit === null)
    throw new Problem('doubt-unknown', `The uncertainty of ${tag} is not on record`, { instrument: tag });
  try {
    return narrowed({ uncertainty, unit }, method);
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw new Problem('instrument-too-coarse', `${tag}: ${error.message}`, { instrument: tag });
  }
}
