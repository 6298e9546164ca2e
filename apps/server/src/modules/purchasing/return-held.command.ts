import { Problem } from '@hubwright/contracts/problems';
import { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';

export const returnHeld = defineCommand(heldOperations.returnHeld, {
  locks: (input) => [`held:${input.heldId}`],
  async execute({ tx, input, today, actor, expectedVersion }) {
    const held = found(await tx.heldDelivery.findUnique({ where: { id: input.heldId } }), 'This held delivery');
    sameVersion(held.version, expectedVersion);
    if (held.state === 'returned') throw new Problem('already-returned', `${held.number} went back before`);
    if (input.returnedOn > today)
      throw new Problem('invalid-input', 'What has not left yet is still held', {}, [
        { pointer: '/returnedOn', detail: 'Today at the latest' },
      ]);
    const version = held.version + 1;
    await tx.heldDelivery.update({
      where: { id: held.id },
      data: {
        ...{ state: 'returned', returnedOn: toDbDate(input.returnedOn), returnedBy: actor.personId },
        ...{ returnNote: input.returnNote, version },
      },
    });
    return {
      reply: { id: held.id, version },
      subjects: [{ kind: 'held-delivery', id: held.id, before: held.version, after: version }],
      facts: { number: held.number, returnedOn: input.returnedOn, returnNote: input.returnNote },
    };
  },
});
