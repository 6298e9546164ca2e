import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { kitSubjects, theKit, touchKit } from './kit.ts';

/** Promised pieces become free for others. */
export const releaseReservation = defineCommand(kitsOperations.releaseReservation, {
  async locks(input, tx) {
    const held = await tx.reservation.findUnique({ where: { id: input.reservationId }, include: { lot: true } });
    return [`kit:${input.kitId}`, ...(held ? [`part:${held.lot.partId}`] : [])];
  },
  async execute({ tx, input }) {
    const kit = await theKit(tx, input.kitId);
    const held = found(
      await tx.reservation.findFirst({
        where: { id: input.reservationId, kitLine: { kitId: kit.id } },
        include: { lot: { select: { code: true } } },
      }),
      'This reservation',
    );
    if (held.frozenAt)
      throw new Problem('reservation-frozen', `${held.lot.code} is frozen for ${kit.code}: ${held.frozenReason}`, {
        lot: held.lot.code,
      });
    await tx.reservation.delete({ where: { id: held.id } });
    const reply = await touchKit(tx, kit);
    return {
      reply,
      subjects: kitSubjects(kit, reply.version, [held.lotId]),
      facts: { kit: kit.code, lot: held.lot.code, quantity: held.quantity },
      ...(input.reason ? { reason: input.reason } : {}),
    };
  },
});
