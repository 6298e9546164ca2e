import { Problem } from '@hubwright/contracts/problems';
import { recordOperations } from '@hubwright/contracts/records/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { introduce, type KeyFolder, makeKey } from '../../platform/records/shop-key.ts';
import { shopSubjectId } from '../people/public.ts';

/** The new key's file is kept before its row: a row never names a key that nobody has. */
export const rotateShopKey = (keys: KeyFolder) =>
  defineCommand(recordOperations.rotateShopKey, {
    locks: () => ['shop-key'],
    async execute({ tx, input, now }) {
      const newest = await tx.shopKey.findFirst({ orderBy: { sequence: 'desc' }, select: { id: true } });
      const previous = newest && (await keys.find(newest.id));
      if (!previous) throw new Problem('shop-key-missing', 'There is no key here that could sign a new one');
      const made = makeKey();
      await keys.keep(made);
      const { id, statement, signature, previousSignature } = introduce(made, now.toISOString(), previous);
      await tx.shopKey.create({ data: { id, at: now, statement, signature, previousSignature } });
      return {
        reply: { id },
        subjects: [{ kind: 'shop', id: shopSubjectId }],
        facts: { key: id, takesOverFrom: previous.id },
        reason: input.reason,
      };
    },
  });
