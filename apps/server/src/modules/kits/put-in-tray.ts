import { Problem } from '@hubwright/contracts/problems';
import { lotByCode, moveStock, type StockLot } from '../inventory/public.ts';
import { linesFor, type Share, share } from './issue-plan.ts';
import type { Kit, KitContext } from './kit.ts';

type PutIn = KitContext;

/** The lot a scan names, or `unknown-scan`. */
export async function scannedLot({ tx }: PutIn, code: string): Promise<StockLot> {
  const lot = await lotByCode(tx, code);
  if (!lot) throw new Problem('unknown-scan', `${code} is not the code of a lot`);
  return lot;
}

/** Pieces of a lot go from their bins into the tray, for the line named or for those that need them; throws why they may not. */
export async function putInTray(
  context: PutIn,
  kit: Kit,
  given: { lot: StockLot; lineId: string | undefined; quantity: number | undefined },
): Promise<{ shares: Share[]; movementIds: string[] }> {
  const { lot, lineId, quantity } = given;
  const servers = await linesFor(context, { kit, lot, lineId });
  const shares = share({ kit, lot, servers, quantity });
  const movementIds: string[] = [];
  const bins = lot.bins.map((each) => ({ ...each }));
  for (const each of shares) {
    movementIds.push(...(await pull(context, lot, { kit, bins, share: each })));
    await settlePromises(context, lot, each);
  }
  return { shares, movementIds };
}

/** Moves one line's pieces, from as many bins as it takes. */
async function pull(
  context: PutIn,
  lot: StockLot,
  { kit, bins, share: { line, quantity } }: { kit: Kit; bins: { bin: string; onHand: number }[]; share: Share },
): Promise<string[]> {
  const ids: string[] = [];
  let left = quantity;
  for (const bin of bins) {
    const taken = Math.min(left, bin.onHand);
    if (taken === 0) continue;
    const moved = await moveStock(context, {
      lot,
      quantity: taken,
      from: { kind: 'bin', ref: bin.bin },
      to: { kind: 'tray', ref: kit.id },
      reason: 'issued',
      position: line.position,
      kitLineId: line.id,
    });
    bin.onHand -= taken;
    left -= taken;
    ids.push(moved.movementId);
  }
  return ids;
}

/** What was promised of this lot is now in the tray; promises beyond what the line still needs fall away. */
async function settlePromises({ tx }: PutIn, lot: StockLot, { line, quantity, stillNeeds }: Share): Promise<void> {
  const promises = await tx.reservation.findMany({ where: { kitLineId: line.id }, orderBy: { createdAt: 'desc' } });
  const kept = promises.map((each) => ({
    ...each,
    keep: each.lotId === lot.id ? Math.max(0, each.quantity - quantity) : each.quantity,
  }));
  let over = kept.reduce((sum, { keep }) => sum + keep, 0) - stillNeeds;
  for (const each of kept) {
    const less = Math.max(0, Math.min(over, each.keep));
    over -= less;
    const keep = each.keep - less;
    if (keep === each.quantity) continue;
    if (keep === 0) await tx.reservation.delete({ where: { id: each.id } });
    else await tx.reservation.update({ where: { id: each.id }, data: { quantity: keep } });
  }
}
