import { match } from './match.ts';
import { replay } from './replay.ts';
import type { Closing, KitMovement, Required } from './shapes.ts';
import { refuseBadLines, refuseBadMovements } from './validate.ts';

export type { Closing, KitMovement, Place, Required } from './shapes.ts';

/**
 * May this build be closed? Yes when tray and rack are empty and what the ledger proves to be in the unit is what the list
 * requires, position by position. Otherwise every leftover, missing and unexpected piece is named.
 *
 * **What the unit held before.** The ledger of a kit begins at teardown, so a part may leave the unit without ever having been
 * put in: the unit held it. Only what such moves prove is presumed, at the moment it leaves, so it never counts as still
 * installed. A line for which nothing was moved is therefore missing: silence is no proof. Leave what stays closed off the list.
 *
 * **Source.** A piece is `new` when it came to the unit from the tray, `reused` when it came from the rack. A new piece taken back
 * to the tray is new again; one that went through the rack or scrap is not. A used piece that passes through the tray, or one that
 * reaches the unit past tray and rack, satisfies `any` only. Hand over the history without a movement and its own reversal.
 *
 * **Position.** A line with a position is met only by pieces put at that position; a line without one by pieces anywhere. A removal
 * that names no position takes the piece put in last, one that names a position a piece there, else one whose position was not
 * recorded, else what the unit held there before. Where several equal pieces are swapped one at a time, record their positions:
 * without them an old piece taken off after a new one went in reads as the new one, and the build stays open.
 *
 * **Alternates and as-needed lines** are settled together, by maximum flow, so the order of lines never decides whether it closes.
 *
 * Units: pieces (or the smallest issue unit). Source of the rule: common practice, no source.
 * Errors: RuleError `bad-kit-line`, `bad-movement`, `more-than-held` (tray, rack or scrap would go below zero).
 *
 * Caution: a closed kit says that the pieces are accounted for, not that the unit is airworthy; the current manual, the people
 * licensed to approve it and the local authority decide that.
 *
 * @example // one new seal at the hub, the old spring reused after inspection
 * const required = [
 *   { part: 'SEAL', quantity: 1, position: 'hub', source: 'new' },
 *   { part: 'SPRING', quantity: 1, source: 'reused' },
 * ];
 * const teardown = [
 *   { part: 'SEAL', quantity: 1, from: 'unit', to: 'rack', position: 'hub' },
 *   { part: 'SPRING', quantity: 1, from: 'unit', to: 'rack' },
 *   { part: 'SEAL', quantity: 2, from: 'stock', to: 'tray' },
 *   { part: 'SEAL', quantity: 1, from: 'tray', to: 'unit', position: 'hub' },
 *   { part: 'SEAL', quantity: 1, from: 'rack', to: 'scrap' },
 * ];
 * close({ required, movements: teardown });
 * // { closed: false, missing: [{ part: 'SPRING', quantity: 1 }], unexpected: [],
 * //   leftOver: [{ part: 'SEAL', quantity: 1, place: 'tray' }, { part: 'SPRING', quantity: 1, place: 'rack' }] }
 * close({ required, movements: [...teardown,
 *   { part: 'SPRING', quantity: 1, from: 'rack', to: 'unit' }, { part: 'SEAL', quantity: 1, from: 'tray', to: 'stock' } ] });
 * // { closed: true, leftOver: [], missing: [], unexpected: [] }
 */
export function close(input: { required: Required[]; movements: KitMovement[] }): Closing {
  refuseBadLines(input.required);
  refuseBadMovements(input.movements);
  const { tray, rack, unit } = replay(input.movements);
  const { missing, unexpected } = match(input.required, unit);
  const leftOver = [...named(tray, 'tray'), ...named(rack, 'rack')];
  return {
    closed: leftOver.length === 0 && missing.length === 0 && unexpected.length === 0,
    leftOver,
    missing,
    unexpected,
  };
}

function named(held: Map<string, number>, place: 'tray' | 'rack'): Closing['leftOver'] {
  return [...held].map(([part, quantity]) => ({ part, quantity, place }));
}
