import { RuleError } from '../errors/index.ts';
import type { KitMovement } from './shapes.ts';

/** new: came from the tray, unused; reused: came from the rack; other: neither can be claimed. */
export type Origin = 'new' | 'reused' | 'other';
/** Equal pieces the ledger proves to be in the unit. */
export type Pieces = { part: string; position: string | undefined; origin: Origin; quantity: number };

type Lot = { origin: Origin; quantity: number };
type State = {
  tray: Map<string, Lot[]>;
  rack: Map<string, number>;
  scrap: Map<string, number>;
  /** In the order put in, so the last one in is found first. */
  unit: Pieces[];
};

/** Plays the ledger once and returns what it proves to be in tray, rack and unit. */
export function replay(movements: KitMovement[]): {
  tray: Map<string, number>;
  rack: Map<string, number>;
  unit: Pieces[];
} {
  const state: State = { tray: new Map(), rack: new Map(), scrap: new Map(), unit: [] };
  movements.forEach((movement, index) => {
    for (const lot of leave(state, movement, index)) arrive(state, movement, lot);
  });
  const tray = new Map([...state.tray].map(([part, lots]) => [part, sum(lots)] as const));
  return { tray: withoutZeros(tray), rack: withoutZeros(state.rack), unit: state.unit };
}

function leave(state: State, movement: KitMovement, index: number): Lot[] {
  const { part, quantity, from } = movement;
  if (from === 'unit') return leaveUnit(state, movement);
  if (from === 'tray') {
    const lots = state.tray.get(part) ?? [];
    refuseMoreThan(sum(lots), movement, index);
    // What goes back to stock is unused; everywhere else the doubtful piece is presumed to move first.
    const first = take(lots, quantity, (lot) => (lot.origin === 'new') === (movement.to === 'stock'));
    return [...first, ...take(lots, quantity - sum(first), () => true)];
  }
  if (from === 'rack' || from === 'scrap') {
    const held = state[from].get(part) ?? 0;
    refuseMoreThan(held, movement, index);
    state[from].set(part, held - quantity);
    return [{ origin: from === 'rack' ? 'reused' : 'other', quantity }];
  }
  return [{ origin: 'new', quantity }]; // stock and customer: what they hold is not this ledger's matter
}

/** Known pieces leave first; what is left to take, the unit held before. */
function leaveUnit(state: State, movement: KitMovement): Lot[] {
  const { part, position, quantity } = movement;
  const here = (p: Pieces) => p.part === part && (position === undefined || p.position === position);
  const somewhere = (p: Pieces) => p.part === part && p.position === undefined;
  const taken: Lot[] = [];
  for (const wanted of [here, somewhere]) taken.push(...take(state.unit, quantity - sum(taken), wanted));
  state.unit = state.unit.filter((pieces) => pieces.quantity > 0);
  const before = quantity - sum(taken);
  return before > 0 ? [...taken, { origin: 'other', quantity: before }] : taken;
}

function arrive(state: State, movement: KitMovement, lot: Lot): void {
  const { part, from, to, position } = movement;
  if (to === 'unit') {
    const origin = from === 'tray' || from === 'rack' ? lot.origin : 'other';
    state.unit.push({ part, position, origin, quantity: lot.quantity });
  } else if (to === 'tray') {
    // Only what never was in a unit is new; a piece from the rack does not become new by lying in the tray.
    const origin = lot.origin === 'new' ? 'new' : 'other';
    state.tray.set(part, [...(state.tray.get(part) ?? []), { origin, quantity: lot.quantity }]);
  } else if (to === 'rack' || to === 'scrap') {
    state[to].set(part, (state[to].get(part) ?? 0) + lot.quantity);
  }
}

/** Takes up to `quantity` from the end of the list, from the lots wanted. */
function take<L extends Lot>(lots: L[], quantity: number, wanted: (lot: L) => boolean): Lot[] {
  const taken: Lot[] = [];
  let left = quantity;
  for (let i = lots.length - 1; i >= 0 && left > 0; i--) {
    const lot = lots[i]!;
    const count = wanted(lot) ? Math.min(lot.quantity, left) : 0;
    if (count === 0) continue;
    lot.quantity -= count;
    left -= count;
    taken.push({ origin: lot.origin, quantity: count });
  }
  return taken;
}

function refuseMoreThan(held: number, movement: KitMovement, index: number): void {
  if (movement.quantity > held) {
    const sentence = `The ${movement.from} holds ${held} of ${movement.part}; ${movement.quantity} cannot leave it.`;
    throw new RuleError('more-than-held', sentence, `movements[${index}].quantity`);
  }
}

function sum(lots: readonly { quantity: number }[]): number {
  return lots.reduce((total, lot) => total + lot.quantity, 0);
}

function withoutZeros(held: Map<string, number>): Map<string, number> {
  return new Map([...held].filter(([, quantity]) => quantity > 0));
}
