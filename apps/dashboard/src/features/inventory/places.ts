import type { partOperations } from '@hubwright/contracts/inventory/part-operations';
import type { Reply } from '@hubwright/contracts/operation';

export type Place = Reply<typeof partOperations.listPlaces>['rows'][number];
export type LotThere = Reply<typeof partOperations.listLotsAt>['rows'][number];

/** A place in the address bar: `bin:A-01`, `quarantine:`. */
export function placeKey({ kind, ref }: Pick<Place, 'kind' | 'ref'>): string {
  return `${kind}:${ref}`;
}
