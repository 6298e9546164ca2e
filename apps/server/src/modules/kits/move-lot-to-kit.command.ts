import { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { touchKit } from './kit.ts';
import { planMove } from './move-plan.ts';
import { promiseMany } from './promise-many.ts';
import { shelfLocks } from './reserve.ts';

/** What was supposed becomes so: pieces of the lot are promised to this kit, and the kits that gave them are on record. */
export const moveLotToKit = defineCommand(promiseOperations.moveLotToKit, {
  async locks({ kitId, lotId }, tx) {
    const lines = await tx.kitLine.findMany({ where: { kitId }, select: { partId: true } });
    const lot = await tx.lot.findUnique({ where: { id: lotId }, select: { partId: true } });
    const givers = await tx.reservation.findMany({
      where: { lotId },
      select: { kitLine: { select: { kitId: true } } },
    });
    const parts = await shelfLocks(tx, [...lines.map(({ partId }) => partId), ...(lot ? [lot.partId] : [])]);
    return [`kit:${kitId}`, ...givers.map(({ kitLine }) => `kit:${kitLine.kitId}`), ...parts];
  },
  async execute(context) {
    const { tx, input, today } = context;
    const { kit, line, lot, quantity, takenFrom } = await planMove(tx, input, today);
    const emptied = takenFrom.filter(({ isAll }) => isAll).map(({ reservationId }) => reservationId);
    await tx.reservation.deleteMany({ where: { id: { in: emptied } } });
    // At most one promise gives a part of itself: the last that was needed.
    for (const { reservationId, quantity: pieces, isAll } of takenFrom)
      if (!isAll)
        await tx.reservation.update({ where: { id: reservationId }, data: { quantity: { decrement: pieces } } });
    await promiseMany(context, [{ lineId: line.id, lotId: lot.id, quantity }]);
    const givers = await tx.kit.findMany({ where: { id: { in: takenFrom.map(({ kitId }) => kitId) } } });
    await tx.kit.updateMany({ where: { id: { in: givers.map(({ id }) => id) } }, data: { version: { increment: 1 } } });
    const reply = await touchKit(tx, kit);
    const from = takenFrom.map(({ kitCode, quantity: pieces }) => ({ kitCode, quantity: pieces }));
    return {
      reply: { ...reply, quantity, takenFrom: from },
      subjects: [
        { kind: 'kit', id: kit.id, before: kit.version, after: reply.version },
        { kind: 'work-order', id: kit.workOrderId },
        { kind: 'lot', id: lot.id },
        ...givers.map(({ id, version }) => ({ kind: 'kit', id, before: version, after: version + 1 })),
      ],
      facts: { kit: kit.code, position: line.position, lot: lot.code, quantity, takenFrom: from },
      reason: input.reason,
    };
  },
});
