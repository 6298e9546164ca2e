import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';

/** Throws `last-administrator` when nobody else active is one. Call under the lock `people`. */
export async function refuseLastAdministrator(
  tx: Tx,
  person: { id: string; displayName: string; roles: readonly string[]; active: boolean },
): Promise<void> {
  if (!person.active || !person.roles.includes('administrator')) return;
  const others = await tx.person.count({
    where: { id: { not: person.id }, active: true, roles: { has: 'administrator' } },
  });
  if (others === 0) throw new Problem('last-administrator', `${person.displayName} is the only administrator`);
}
