import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { sameVersion } from '../../platform/command/version.ts';
import { shopSubjectId } from '../people/public.ts';

export const setBuyingCosts = defineCommand(offerOperations.setBuyingCosts, {
  locks: () => ['buying-costs'],
  async execute({ tx, input, expectedVersion }) {
    const before = await tx.buyingCost.findUnique({ where: { id: 1 } });
    sameVersion(before?.version ?? 0, expectedVersion);
    const version = (before?.version ?? 0) + 1;
    await tx.buyingCost.upsert({
      where: { id: 1 },
      create: { id: 1, ...input, version },
      update: { ...input, version },
    });
    return { reply: { version }, subjects: [{ kind: 'shop', id: shopSubjectId }], facts: { ...input } };
  },
});
