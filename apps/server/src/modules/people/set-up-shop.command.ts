import { peopleOperations } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { giveSignInName } from './given-names.ts';
import { hashSecret, refuseWeak } from './passwords.ts';
import { refuseSharedName } from './shared-accounts.ts';
import { shopSubjectId } from './shop-subject.ts';

/** The one-time set-up: works only while nobody exists. */
export const setUpShop = defineCommand(peopleOperations.setUpShop, {
  locks: () => ['shop'],
  async execute({ tx, input, now, newId }) {
    if ((await tx.person.count()) > 0) throw new Problem('already-set-up', 'There is an administrator already');
    const { administrator } = input;
    refuseSharedName(administrator.displayName);
    await refuseWeak(administrator.password, administrator.signInName, [administrator.displayName, input.shop.name]);
    const personId = newId();
    await giveSignInName(tx, administrator.signInName, { personId, now });
    await tx.shopProfile.create({ data: { id: 1, ...input.shop } });
    await tx.person.create({
      data: {
        id: personId,
        signInName: administrator.signInName,
        displayName: administrator.displayName,
        initials: administrator.initials,
        roles: ['administrator'],
        passwordHash: await hashSecret(administrator.password),
        secretsOwn: true,
        createdAt: now,
      },
    });
    return {
      reply: { ok: true as const },
      subjects: [
        { kind: 'shop', id: shopSubjectId, after: 1 },
        { kind: 'person', id: personId, after: 1 },
      ],
      facts: { administrator: personId },
    };
  },
});
