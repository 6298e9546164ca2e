/** Where a piece can be. `rack`: the unit's own parts taken off it. `tray`: what was pulled for this kit. */
export type Place = 'stock' | 'tray' | 'rack' | 'unit' | 'scrap' | 'customer';

/** One move in the ledger. Quantities are positive integers in the part's smallest issue unit. */
export type KitMovement = { part: string; quantity: number; from: Place; to: Place; position?: string };

export type Required = {
  part: string;
  /** Exactly this many; for an "as needed" line the most that may be used. */
  quantity: number;
  /** As needed: the least (0 allowed). Absent: exactly `quantity`. */
  minimum?: number;
  position?: string;
  /** Alternates that may stand in for `part`. */
  acceptable?: string[];
  /** new: only from the tray; reused: only from the rack; default any. */
  source?: 'new' | 'reused' | 'any';
};

export type Closing = {
  closed: boolean;
  leftOver: { part: string; quantity: number; place: 'tray' | 'rack' }[];
  missing: { part: string; quantity: number; position?: string }[];
  /** In the unit beyond or outside the list, or from the wrong source. */
  unexpected: { part: string; quantity: number }[];
};
