import type { Reply } from '@hubwright/contracts/operation';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { queryFor } from '../../api/query.ts';

export const peopleQuery = queryFor(peopleOperations.listPeople, {});
export type Person = Reply<typeof peopleOperations.listPeople>['rows'][number];
export type Authorisation = Person['authorisations'][number];

/** An authorisation can be used from `validFrom` up to the day before `expiresOn` (the first day it may not), unless revoked by then. */
export function isInForce(authorisation: Authorisation, today: string): boolean {
  const { validFrom, expiresOn, revokedOn } = authorisation;
  return validFrom <= today && (expiresOn === null || today < expiresOn) && (revokedOn === null || today < revokedOn);
}

/** Whether an authorisation in force ends within so many days: time to renew it. */
export function endsSoon(authorisation: Authorisation, today: string, withinDays = 30): boolean {
  if (!isInForce(authorisation, today) || authorisation.expiresOn === null) return false;
  const left = (Date.parse(authorisation.expiresOn) - Date.parse(today)) / 86_400_000;
  return left <= withinDays;
}
