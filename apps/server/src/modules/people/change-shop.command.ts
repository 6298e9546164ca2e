import { peopleOperations } from '@hubwright/contracts/people/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { shopSubjectId } from './shop-subject.ts';

export const changeShop = defineCommand(peopleOperations.changeShop, {
  locks: () => ['shop'],
  async execute({ tx, input, expectedVersion }) {
    const current = found(await tx.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    sameVersion(current.version, expectedVersion);
    const version = current.version + 1;
    await tx.shopProfile.update({ where: { id: 1 }, data: { ...input, version } });
    return {
      reply: { version },
      subjects: [{ kind: 'shop', id: shopSubjectId, before: current.version, after: version }],
    };
  },
});
