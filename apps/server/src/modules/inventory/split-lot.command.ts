import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { copyLot } from './copy-lot.ts';
import { dividedAt } from './divided-where.ts';
import { binExists, lotLocks, refuseSuspected, theLot } from './lot.ts';
import { moveStock } from './move-stock.ts';
import { freeWhatIsGone } from './reservations.ts';

/** Some pieces get a label of their own, where they lie: one movement out of the lot, one into the other. */
export const splitLot = defineCommand(handlingOperations.splitLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input } = context;
    const lot = await theLot(tx, input.lotId);
    sameVersion(lot.version, context.expectedVersion);
    refuseSuspected(lot);
    if (input.bin) await binExists(tx, input.bin);
    const place = await dividedAt(tx, lot, input);
    const { _sum } = await tx.balance.aggregate({ where: { lotId: lot.id }, _sum: { onHand: true } });
    if (input.quantity === _sum.onHand)
      throw new Problem('nothing-to-split', `${lot.code} has ${_sum.onHand} in all`, { lot: lot.code }, [
        { pointer: '/quantity', detail: 'Leave at least one piece to the lot' },
      ]);
    const other = await copyLot(context, lot);
    const { quantity, reason } = input;
    const out = await moveStock(context, {
      lot,
      quantity,
      from: place,
      to: { kind: 'other-lot', ref: other.id },
      reason,
    });
    await moveStock(context, { lot: other, quantity, from: { kind: 'other-lot', ref: lot.id }, to: place, reason });
    const freed = await freeWhatIsGone(tx, lot.id);
    return {
      reply: { id: lot.id, version: out.version, newLotId: other.id, newCode: other.code, freed },
      subjects: [
        { kind: 'lot', id: lot.id, before: lot.version, after: out.version },
        { kind: 'lot', id: other.id, after: 2 },
      ],
      facts: { code: lot.code, newCode: other.code, quantity, at: input.bin ?? place.kind, freed },
      reason,
    };
  },
});
