import { recordOperations } from '@hubwright/contracts/records/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { shopSubjectId } from '../people/public.ts';

export const setRetention = defineCommand(recordOperations.setRetention, {
  locks: () => ['shop'],
  async execute({ tx, input, expectedVersion }) {
    const current = found(await tx.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    sameVersion(current.version, expectedVersion);
    const version = current.version + 1;
    await tx.shopProfile.update({ where: { id: 1 }, data: { retentionRules: input.rules, version } });
    return {
      reply: { version },
      subjects: [{ kind: 'shop', id: shopSubjectId, before: current.version, after: version }],
      facts: { before: current.retentionRules },
      reason: input.reason,
    };
  },
});
