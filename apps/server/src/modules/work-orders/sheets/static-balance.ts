import { Problem } from '@hubwright/contracts/problems';
import { judgeStatic, type StaticPlaced, sayStatic } from '@hubwright/rules/balance';
import { RuleError } from '@hubwright/rules/errors';
import { piecesOnUnit } from '../../kits/public.ts';
import type { Signing } from '../step-signing.ts';
import { type Judge, sheetWrong } from './judge.ts';

/**
 * A static balance judged by its readings after the weights; which weights are on it is what the ledger says is on the unit. Throws
 * `weights-not-on-unit`, or `sheet-wrong` at the place a rule names.
 */
export const judgeStaticBalance: Judge<'static-balance'> = async ({ tx }, { step, spec, entry }) => {
  try {
    const verdict = judgeStatic(entry, spec);
    const parts = spec.hardware.map(({ part }) => part);
    await refuseOtherPieces(tx, { workOrderId: step.traveler.workOrderId, parts, placed: entry.placed });
    return { said: sayStatic(entry, spec, verdict), reasons: verdict.reasons, verdict };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw sheetWrong(error.message, `/${error.path.replaceAll(/[.[]/g, '/').replaceAll(']', '')}`);
  }
};

/** Piece for piece what went through the kit: a weight without a lot has no paper, one that is not named is somewhere else. */
async function refuseOtherPieces(
  tx: Signing['tx'],
  given: { workOrderId: string; parts: readonly string[]; placed: readonly StaticPlaced[] },
): Promise<void> {
  const onUnit = await piecesOnUnit(tx, given.workOrderId, given.parts);
  const differences = given.parts.flatMap((part) => {
    const named = given.placed.reduce((sum, one) => sum + (one.part === part ? one.pieces : 0), 0);
    const held = onUnit.get(part) ?? 0;
    return named === held ? [] : [`${part}: ${named} named here, ${held} on the unit`];
  });
  if (differences.length === 0) return;
  throw new Problem('weights-not-on-unit', differences.join('; '), { differences }, [
    {
      pointer: '/sheet/placed',
      detail: 'Name the pieces that went into the unit through its kit, no more and no fewer',
    },
  ]);
}
