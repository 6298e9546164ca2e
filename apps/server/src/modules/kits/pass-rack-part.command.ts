import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { kitLocks, kitSubjects, openKit, touchKit } from './kit.ts';
import { rackLot } from './rack.ts';

const operation = kitsOperations.passRackPart;

/** An inspector's signature that a part taken off may be used again in its unit. */
export const passRackPart = defineCommand(operation, {
  locks: (input, tx) => kitLocks(tx, input.kitId, { id: input.lotId }),
  async execute(context) {
    const { tx, input, actor, today } = context;
    const kit = await openKit(tx, input.kitId);
    const need = { process: 'dimensional-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const { held, line } = await rackLot(context, kit, input.lotId);
    if (line.source === 'new')
      throw new Problem('new-only', `${line.part.number} at ${line.position} is always new`, { lot: held.lotCode });
    if (held.state !== 'quarantine')
      throw new Problem('lot-not-waiting', `${held.lotCode} is ${held.state}`, { lot: held.lotCode });
    await tx.lot.update({ where: { id: held.lotId }, data: { state: 'accepted', version: { increment: 1 } } });
    const { revisionId, number } = kit.workOrder;
    await writeSignOff(context, {
      workOrderId: kit.workOrderId,
      subject: { kind: 'lot', id: held.lotId },
      meaning: operation.signs ?? '',
      result: 'pass',
      authorisation,
      revisionId,
      content: {
        workOrder: number,
        kit: kit.code,
        part: { number: line.part.number, lot: held.lotCode, position: line.position, quantity: held.quantity },
        revisionId,
        note: input.note,
      },
    });
    const reply = await touchKit(tx, kit);
    return {
      reply,
      subjects: kitSubjects(kit, reply.version, [held.lotId]),
      facts: { kit: kit.code, lot: held.lotCode, position: line.position, revision: revisionId },
      authorisation,
      ...(input.note ? { reason: input.note } : {}),
    };
  },
});
