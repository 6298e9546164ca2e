import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { lotByCode, moveStock, type StockLot } from '../inventory/public.ts';
import { linesFor, type Share, share } from './issue-plan.ts';
import { kitLocks, kitSubjects, openKit, refuseStopped, touchKit } from './kit.ts';

type Issuing = Context<typeof kitsOperations.issueLot>;

/** One scan: pieces of the lot go from their bin into the tray of the kit. */
export const issueLot = defineCommand(kitsOperations.issueLot, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input } = context;
    const kit = await openKit(tx, input.kitId);
    refuseStopped(kit);
    const lot = await lotByCode(tx, input.lotCode);
    if (!lot) throw new Problem('unknown-scan', `${input.lotCode} is not the code of a lot`);
    const servers = await linesFor(context, { kit, lot, lineId: input.lineId });
    const shares = share({ kit, lot, servers, quantity: input.quantity });
    const movementIds: string[] = [];
    const bins = lot.bins.map((each) => ({ ...each }));
    for (const each of shares) {
      movementIds.push(...(await pull(context, lot, { bins, share: each })));
      await settlePromises(context, lot, each);
    }
    const reply = await touchKit(tx, kit);
    const lines = shares.map(({ line, quantity, stillNeeds }) => ({
      lineId: line.id,
      position: line.position,
      quantity,
      stillNeeds,
    }));
    return {
      reply: { ...reply, lotCode: lot.code, lines, movementIds },
      subjects: kitSubjects(kit, reply.version, [lot.id]),
      facts: { kit: kit.code, lot: lot.code, part: lot.partNumber, lines },
    };
  },
});

/** Moves one line's pieces, from as many bins as it takes. */
async function pull(
  context: Issuing,
  lot: StockLot,
  { bins, share: { line, quantity } }: { bins: { bin: string; onHand: number }[]; share: Share },
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
      to: { kind: 'tray', ref: context.input.kitId },
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
async function settlePromises({ tx }: Issuing, lot: StockLot, { line, quantity, stillNeeds }: Share): Promise<void> {
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
