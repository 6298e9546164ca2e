import type { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Misfit, misfit } from '@hubwright/rules/stock';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { lotByCode, type StockLot } from '../inventory/public.ts';
import type { WholeBalance } from './field-balance.ts';

type Fitting = Context<typeof fieldBalanceOperations.fitFieldWeights>;

/** Pieces of one lot for one place. */
export interface Piece {
  readonly place: string;
  readonly pieces: number;
  readonly lot: StockLot;
  /** Grams of one. */
  readonly mass: string;
}

/** What is to be fitted, of lots that may be used and hold that much. */
export async function piecesOf(context: Fitting, balance: WholeBalance): Promise<Piece[]> {
  const found: Piece[] = [];
  for (const [at, { place, lotCode, pieces }] of context.input.weights.entries()) {
    const lot = await lotByCode(context.tx, lotCode);
    if (!lot) throw new Problem('unknown-scan', `${lotCode} is not the code of a lot`);
    const mass = await massOf(context.tx, lot.partId);
    if (mass === undefined)
      throw new Problem('no-hardware', `Nobody has said what one ${lot.partNumber} weighs`, {}, [
        { pointer: `/weights/${at}/lotCode`, detail: 'No balance hardware' },
      ]);
    refuseUnusable(context, balance, lot);
    found.push({ place, pieces, lot, mass });
  }
  for (const { lot } of found) {
    const asked = found.reduce((sum, one) => sum + (one.lot.id === lot.id ? one.pieces : 0), 0);
    if (asked > lot.onHand) throw new Problem('not-enough', `${lot.code} has ${lot.onHand} in bins`, { lot: lot.code });
    if (asked > lot.facts.free)
      throw new Problem('lot-reserved', `Only ${lot.facts.free} of ${lot.code} are not promised to kits`, {
        lot: lot.code,
      });
  }
  return found;
}

async function massOf(tx: Tx, partId: string): Promise<string | undefined> {
  const row = await tx.balanceHardware.findFirst({
    where: { partId },
    orderBy: [{ enteredAt: 'desc' }, { id: 'desc' }],
  });
  return row?.mass;
}

const why: Record<Misfit, string> = {
  'wrong-part': 'is another part',
  'not-accepted': 'is not accepted',
  'no-certificate': 'has no certificate',
  expired: 'has expired',
  'short-life': 'expires too soon',
  'source-not-accepted': 'is of a source the customer does not accept',
  'other-owner': 'belongs to another customer',
};

function refuseUnusable({ today }: Fitting, { customer }: WholeBalance, lot: StockLot): void {
  const reason = misfit(lot.facts, {
    ...{ parts: [lot.partId], today, buildOn: today },
    ...{ acceptedSources: customer.acceptedSources, owner: customer.id },
  });
  if (reason) throw new Problem('lot-not-usable', `${lot.code} ${why[reason]}`, { lot: lot.code });
}
