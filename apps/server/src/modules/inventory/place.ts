/** Kinds of place a quantity can be at. Trays belong to a kit; racks and units to a work order; the rest stand for themselves. */
export type PlaceKind =
  | 'supplier'
  | 'receiving'
  | 'quarantine'
  | 'bin'
  | 'tray'
  | 'unit'
  | 'vendor'
  | 'scrap'
  | 'rack'
  | 'customer'
  | 'count';

export interface Place {
  readonly kind: PlaceKind;
  /** Bin code, or the id of the kit, work order, vendor or customer; empty where the kind says it all. */
  readonly ref: string;
}

/** Places outside the shop's own stock: what leaves them or arrives there is not held in a balance. */
export function isOutside(place: Place): boolean {
  return place.kind === 'supplier' || place.kind === 'count' || place.kind === 'customer';
}
