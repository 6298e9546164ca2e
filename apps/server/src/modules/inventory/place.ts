import type { placeKinds } from '@hubwright/contracts/inventory/shapes';

/** Kinds of place a quantity can be at. Trays belong to a kit; racks and units to a work order; the rest stand for themselves. */
export type PlaceKind = (typeof placeKinds)[number];

export interface Place {
  readonly kind: PlaceKind;
  /** Bin code, or the id of the kit, work order, vendor or customer; empty where the kind says it all. */
  readonly ref: string;
}

export const quarantine: Place = { kind: 'quarantine', ref: '' };
export const scrap: Place = { kind: 'scrap', ref: '' };
export const count: Place = { kind: 'count', ref: '' };

/** A bin where one is named, quarantine where none is. */
export function binOrQuarantine(bin: string | undefined): Place {
  return bin ? { kind: 'bin', ref: bin } : quarantine;
}

const outside: ReadonlySet<PlaceKind> = new Set(['supplier', 'count', 'customer', 'other-lot']);

/** Places outside the shop's own stock: what leaves them or arrives there is not held in a balance. */
export function isOutside(place: Place): boolean {
  return outside.has(place.kind);
}
