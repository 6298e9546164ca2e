import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';

export const addMachine = defineCommand(peeningOperations.addPeeningMachine, {
  locks: ({ code }) => [`peening-machine-code:${code}`],
  async execute({ tx, input, newId }) {
    const known = await tx.peeningMachine.findUnique({ where: { code: input.code } });
    if (known)
      throw new Problem('invalid-input', `${input.code} is on record already`, {}, [
        { pointer: '/code', detail: 'Another machine has this code' },
      ]);
    const id = newId();
    await tx.peeningMachine.create({ data: { id, ...input } });
    return {
      reply: { id, version: 1 },
      subjects: [{ kind: 'peening-machine', id, after: 1 }],
      facts: { code: input.code, title: input.title },
    };
  },
});
