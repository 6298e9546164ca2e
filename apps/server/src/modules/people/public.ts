import type { Level, Process } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import type { Actor } from '../../platform/command/actor.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';
import type { HeldAuthorisation } from './held-authorisation.ts';

export type { HeldAuthorisation } from './held-authorisation.ts';
export { shopSubjectId } from './shop-subject.ts';
export { contentHashOf, writeSignOff } from './sign-off.ts';

/**
 * The actor's authorisation for a process and level on a day. Throws `not-authorised` naming who holds one.
 * Revocation and expiry count from their day on.
 */
export async function requireAuthorisation(
  tx: Tx,
  actor: Actor,
  need: { process: Process; level: Level; today: string },
): Promise<HeldAuthorisation> {
  const today = toDbDate(need.today);
  const holders = await tx.authorisation.findMany({
    where: {
      process: need.process,
      level: need.level,
      validFrom: { lte: today },
      person: { active: true },
      AND: [
        { OR: [{ expiresOn: null }, { expiresOn: { gt: today } }] },
        { OR: [{ revokedOn: null }, { revokedOn: { gt: today } }] },
      ],
    },
    include: { person: { select: { displayName: true } } },
    orderBy: { validFrom: 'asc' },
    take: 100,
  });
  const own = holders.find((held) => held.personId === actor.personId);
  if (own)
    return {
      id: own.id,
      process: need.process,
      level: need.level,
      validFrom: fromDbDate(own.validFrom),
      expiresOn: fromDbDateOrNull(own.expiresOn),
    };
  throw notAuthorised(need, [...new Set(holders.map((held) => held.person.displayName))]);
}

function notAuthorised(need: { process: Process; level: Level }, holders: readonly string[]): Problem {
  const who = holders.length > 0 ? `, held by ${holders.join(', ')}` : ', which nobody holds today';
  return new Problem('not-authorised', `This needs the authorisation “${need.process}, ${need.level}”${who}`, {
    process: need.process,
    level: need.level,
    holders,
  });
}
