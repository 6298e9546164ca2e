import { promiseOperations } from '@hubwright/contracts/kits/promise-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { kitSubjects, openKit, touchKit } from './kit.ts';

/** Promised pieces are set aside: no proposal, no other kit and no release takes them while they lie in their bin. */
export const freezeReservation = defineCommand(promiseOperations.freezeReservation, {
  locks,
  async execute({ tx, input, actor, now }) {
    const { kit, held } = await heldBy(tx, input);
    if (held.frozenAt) throw new Problem('already-frozen', `${held.lot.code} is frozen for ${kit.code} already`);
    const frozen = { frozenAt: now, frozenBy: actor.personId, frozenReason: input.reason };
    await tx.reservation.update({ where: { id: held.id }, data: frozen });
    const reply = await touchKit(tx, kit);
    return {
      reply,
      subjects: kitSubjects(kit, reply.version, [held.lotId]),
      facts: { kit: kit.code, lot: held.lot.code, quantity: held.quantity },
      reason: input.reason,
    };
  },
});

/** An ordinary promise again; who froze it, who ended that and both reasons stay on record. */
export const unfreezeReservation = defineCommand(promiseOperations.unfreezeReservation, {
  locks,
  async execute({ tx, input }) {
    const { kit, held } = await heldBy(tx, input);
    if (!held.frozenAt) throw new Problem('not-frozen', `${held.lot.code} is promised to ${kit.code} and not frozen`);
    const thawed = { frozenAt: null, frozenBy: null, frozenReason: null };
    await tx.reservation.update({ where: { id: held.id }, data: thawed });
    const reply = await touchKit(tx, kit);
    return {
      reply,
      subjects: kitSubjects(kit, reply.version, [held.lotId]),
      facts: {
        ...{ kit: kit.code, lot: held.lot.code, quantity: held.quantity },
        frozen: { by: held.frozenBy, at: held.frozenAt.toISOString(), reason: held.frozenReason },
      },
      reason: input.reason,
    };
  },
});

interface Named {
  readonly kitId: string;
  readonly reservationId: string;
}

async function locks({ kitId, reservationId }: Named, tx: Tx): Promise<string[]> {
  const held = await tx.reservation.findUnique({ where: { id: reservationId }, include: { lot: true } });
  return [`kit:${kitId}`, ...(held ? [`part:${held.lot.partId}`] : [])];
}

async function heldBy(tx: Tx, { kitId, reservationId }: Named) {
  const kit = await openKit(tx, kitId);
  const held = await tx.reservation.findFirst({
    where: { id: reservationId, kitLine: { kitId } },
    include: { lot: { select: { code: true } } },
  });
  return { kit, held: found(held, 'This reservation') };
}
