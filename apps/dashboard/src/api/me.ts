import type { Operation, Reply } from '@hubwright/contracts/operation';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { mayCall } from './permission.ts';
import { queryFor } from './query.ts';

export type Me = Reply<typeof peopleOperations.me>;

/** Who is signed in, with the facts about the shop every page needs. */
export const meQuery = queryFor(peopleOperations.me, {});

export function useMe(): Me {
  return useSuspenseQuery(meQuery).data;
}

/** Whether the signed-in person may call the operation. */
export function useMay(op: Operation): boolean {
  return mayCall(op, useMe().roles);
}
