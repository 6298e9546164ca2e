import type { AuthorisationLevel } from '@hubwright/contracts/people/authorisation-levels';
import type { Process } from '@hubwright/contracts/people/operations';
import { fromDbDate, fromDbDateOrNull, toDbDate } from '../../platform/database/dates.ts';
import type { HeldAuthorisation } from './held-authorisation.ts';
import { type AuthorisationReads, type MissingTraining, trainingGaps } from './training-gaps.ts';

/** Someone who holds an authorisation on a day, with the training that keeps it from being current. */
export interface Holder {
  readonly personId: string;
  readonly name: string;
  readonly hasPin: boolean;
  readonly authorisation: HeldAuthorisation;
  readonly missing: readonly MissingTraining[];
}

/** In force on a day: revocation and expiry count from their day on. */
export function inForceOn(day: string) {
  const on = toDbDate(day);
  return {
    validFrom: { lte: on },
    person: { active: true },
    AND: [
      { OR: [{ expiresOn: null }, { expiresOn: { gt: on } }] },
      { OR: [{ revokedOn: null }, { revokedOn: { gt: on } }] },
    ],
  };
}

/** Each person once, under the authorisation held longest; a trainee lacks no training, being in it. */
export async function holdersOf(
  reads: AuthorisationReads,
  need: { process: Process; level: AuthorisationLevel; today: string },
): Promise<Holder[]> {
  const { process, level, today } = need;
  const rows = await reads.authorisation.findMany({
    where: { process, level, ...inForceOn(today) },
    include: { person: { select: { displayName: true, pinHash: true } } },
    orderBy: { validFrom: 'asc' },
    take: 200,
  });
  const held = rows.filter((row, at) => rows.findIndex(({ personId }) => personId === row.personId) === at);
  const people = held.map(({ personId }) => personId);
  const gaps = level === 'trainee' ? new Map() : await trainingGaps(reads, { process, day: today }, people);
  return held.map(({ id, personId, person, validFrom, expiresOn }) => ({
    ...{ personId, name: person.displayName, hasPin: person.pinHash !== null, missing: gaps.get(personId) ?? [] },
    authorisation: {
      ...{ id, process, level },
      validFrom: fromDbDate(validFrom),
      expiresOn: fromDbDateOrNull(expiresOn),
    },
  }));
}

/** The people the shop names to inspect a process; undefined where everyone authorised may. */
export async function namedInspectors(
  reads: Pick<AuthorisationReads, 'inspectionList'>,
  process: Process,
): Promise<readonly string[] | undefined> {
  const list = await reads.inspectionList.findUnique({ where: { process } });
  return list && list.personIds.length > 0 ? list.personIds : undefined;
}
