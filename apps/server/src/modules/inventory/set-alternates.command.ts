import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { saveAlternates } from './alternates.ts';

export const setAlternates = defineCommand(partOperations.setAlternates, {
  locks: (input) => ['alternates', `part:${input.partId}`],
  async execute({ tx, input, newId, expectedVersion }) {
    const part = found(await tx.part.findUnique({ where: { id: input.partId } }), 'This part number');
    sameVersion(part.version, expectedVersion);
    await saveAlternates({ tx, newId }, part, input.alternates);
    const version = part.version + 1;
    await tx.part.update({ where: { id: part.id }, data: { version } });
    return {
      reply: { id: part.id, version },
      subjects: [{ kind: 'part', id: part.id, before: part.version, after: version }],
      facts: { number: part.number },
    };
  },
});
