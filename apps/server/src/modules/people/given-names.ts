import { createHash } from 'node:crypto';
import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';

/** Gives a sign-in name to a person, for good. Throws `name-used-before` if it ever was someone's, also someone erased since. */
export async function giveSignInName(
  tx: Tx,
  signInName: string,
  { personId, now }: { personId: string; now: Date },
): Promise<void> {
  const hash = createHash('sha256').update(signInName.toLowerCase()).digest('hex');
  if (await tx.givenName.findUnique({ where: { hash } }))
    throw new Problem('name-used-before', `“${signInName}” was already given to someone`, {}, [
      { pointer: '/signInName', detail: 'This was already given to someone' },
    ]);
  await tx.givenName.create({ data: { hash, personId, givenAt: now } });
}
