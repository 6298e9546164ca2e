import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

export const enterHardware = defineCommand(fieldBalanceOperations.enterBalanceHardware, {
  locks: ({ partId }) => [`part:${partId}`],
  async execute({ tx, input, actor, now, entryId, newId }) {
    const part = found(await tx.part.findUnique({ where: { id: input.partId } }), 'This part');
    const id = newId();
    const entered = { enteredBy: actor.personId, enteredAt: now, entryId };
    await tx.balanceHardware.create({ data: { id, partId: part.id, mass: input.mass, ...entered } });
    return {
      reply: { id: part.id, version: part.version },
      subjects: [{ kind: 'part', id: part.id }],
      facts: { part: part.number, mass: input.mass },
    };
  },
});
