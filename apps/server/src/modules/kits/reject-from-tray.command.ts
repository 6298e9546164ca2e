import { holdOperations } from '@hubwright/contracts/kits/hold-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { copyLot, moveStock, refuseSuspected, theLot, writeStockSignature } from '../inventory/public.ts';
import { requireAuthorisation } from '../people/public.ts';
import { holding, moveHeld, scannedAt, takeFrom } from './from-holding.ts';
import type { Held } from './held.ts';
import { type Kit, kitLocks, openKit } from './kit.ts';
import { scanned } from './scan-reply.ts';

const operation = holdOperations.rejectFromTray;
type Rejecting = Context<typeof operation>;
type Lot = Awaited<ReturnType<typeof theLot>>;

/** A customer's own pieces are rejected where they were seen to be bad: held for their owner, and the line asks for others. */
export const rejectFromTray = defineCommand(operation, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { code: input.lotCode }),
  async execute(context) {
    const { tx, input, actor, today } = context;
    const kit = await openKit(tx, input.kitId);
    const need = { process: 'stock-acceptance', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const held = takeFrom(await scannedAt(context, kit, { kind: 'tray', code: input.lotCode }), input.quantity);
    const lot = await theLot(tx, held[0]?.lotId ?? '');
    if (!lot.ownerId || lot.origin === 'taken-off')
      throw new Problem('not-a-customers', `${lot.code} is no piece a customer brought`, { lot: lot.code });
    refuseSuspected(lot);
    const { rejected, movementIds } = await apart(context, kit, { lot, held, ownerId: lot.ownerId });
    const { reason, lotCode } = input;
    const quantity = held.reduce((sum, each) => sum + each.quantity, 0);
    const contentHash = await writeStockSignature(context, {
      ...{ lotId: rejected.id, kind: 'rejected', meaning: operation.signs ?? '', authorisation },
      content: {
        code: rejected.code,
        of: lot.code,
        part: lot.part.number,
        quantity,
        from: `tray of ${kit.code}`,
        reason,
      },
    });
    const done = await scanned(context, kit, { lotCode, held, movementIds, did: 'rejected, held for its owner' });
    const [first, ...subjects] = done.subjects;
    return {
      reply: { ...done.reply, held: { id: rejected.id, code: rejected.code } },
      subjects: [first, ...subjects, ...(rejected.id === lot.id ? [] : [{ kind: 'lot', id: rejected.id }])],
      facts: { ...done.facts, rejected: rejected.code, contentHash },
      authorisation: { ...authorisation },
      reason,
    };
  },
});

/** All there is of the lot is rejected under its own label; some of it gets another, so that the rest stays as good as it was. */
async function apart(
  context: Rejecting,
  kit: Kit,
  { lot, held, ownerId }: { lot: Lot; held: readonly Held[]; ownerId: string },
) {
  const { tx, input } = context;
  const { reason } = input;
  const [tray, to] = [holding(kit, 'tray'), { kind: 'held', ref: ownerId } as const];
  const quantity = held.reduce((sum, each) => sum + each.quantity, 0);
  const { _sum } = await tx.balance.aggregate({
    where: { lotId: lot.id, placeKind: { notIn: ['scrap', 'lost', 'held'] } },
    _sum: { onHand: true },
  });
  const isAll = _sum.onHand === quantity;
  const rejected = isAll ? lot : await copyLot(context, lot);
  await tx.lot.update({ where: { id: rejected.id }, data: { state: 'rejected' } });
  const via = isAll ? to : ({ kind: 'other-lot', ref: rejected.id } as const);
  const movementIds = (await moveHeld(context, held, { from: tray, to: via, reason })).map((one) => one.movementId);
  if (isAll) return { rejected, movementIds };
  const from = { kind: 'other-lot', ref: lot.id } as const;
  const { movementId } = await moveStock(context, { lot: rejected, quantity, from, to, reason });
  return { rejected, movementIds: [...movementIds, movementId] };
}
