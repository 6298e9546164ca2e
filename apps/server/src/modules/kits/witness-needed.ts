import { Problem } from '@hubwright/contracts/problems';
import type { Place } from '../inventory/public.ts';
import { lifeLimitsOf } from '../manuals/public.ts';
import type { Held } from './held.ts';
import type { Kit, KitContext } from './kit.ts';

/**
 * Which pieces are not scrapped without somebody else who saw it: what has a serial or a limited life, and what a customer
 * brought in beside the unit. Old seals and hardware off a unit go at every overhaul; a witness for each would sign unseen.
 */
export async function witnessNeeded({ tx }: Pick<KitContext, 'tx'>, kit: Kit): Promise<(held: Held) => boolean> {
  const limits = await lifeLimitsOf(tx, kit.workOrder);
  return ({ part, ownerId, origin }) =>
    part.serialised || limits.has(part.number.toUpperCase()) || (ownerId !== null && origin !== 'taken-off');
}

/** Where such pieces go instead of to scrap: held for their owner, given up by letter and then destroyed before a witness. */
export function heldForOwner(kit: Kit): Place {
  return { kind: 'held', ref: kit.workOrder.customerId };
}

/** Throws `witness-needed` for pieces of the shop that would be scrapped without one. */
export function refuseUnseen(held: readonly Held[], needed: (held: Held) => boolean): void {
  const first = held.find((each) => needed(each));
  if (!first) return;
  const why = first.part.serialised ? 'has a serial' : 'has a limited life';
  throw new Problem('witness-needed', `${first.part.number} ${why}: it is scrapped before a witness`, {
    lot: first.lotCode,
  });
}
