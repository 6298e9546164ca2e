import type { Pieces } from './replay.ts';
import type { Closing, Required } from './shapes.ts';

/** given[line][lot]: how many of the lot the line takes. */
type Flow = { lines: Required[]; lots: Pieces[]; given: number[][]; free: number[]; taken: number[] };

/**
 * Assigns the pieces in the unit to the lines. First every line is brought to its least, as far as any assignment can; then what
 * is left is taken up to the most. Augmenting paths never lower what a line has, so the second stage keeps the first.
 * Source: Ford and Fulkerson, maximal flow, 1956.
 */
export function match(required: Required[], unit: Pieces[]): Pick<Closing, 'missing' | 'unexpected'> {
  const lots = merged(unit);
  const flow: Flow = {
    lines: required,
    lots,
    given: required.map(() => lots.map(() => 0)),
    free: lots.map((lot) => lot.quantity),
    taken: required.map(() => 0),
  };
  const least = required.map((line) => line.minimum ?? line.quantity);
  fill(flow, least);
  const missing = required.flatMap((line, index) => short(line, least[index]! - flow.taken[index]!));
  fill(
    flow,
    required.map((line) => line.quantity),
  );
  return { missing, unexpected: unused(flow) };
}

function fill(flow: Flow, capacity: number[]): void {
  flow.lines.forEach((_, line) => {
    let room = capacity[line]! - flow.taken[line]!;
    while (room > 0) {
      const moved = augment({ flow, seen: new Set() }, line, room);
      if (moved === 0) break;
      flow.taken[line] = flow.taken[line]! + moved;
      room -= moved;
    }
  });
}

/** Brings up to `wanted` pieces to a line: free ones, else ones another line can replace. Returns how many. */
function augment(search: { flow: Flow; seen: Set<number> }, line: number, wanted: number): number {
  const { flow, seen } = search;
  seen.add(line);
  const row = flow.given[line]!;
  const usable = usableLots(flow, flow.lines[line]!);
  for (const lot of usable) {
    const count = Math.min(wanted, flow.free[lot]!);
    if (count === 0) continue;
    flow.free[lot] = flow.free[lot]! - count;
    row[lot] = row[lot]! + count;
    return count;
  }
  for (const lot of usable) {
    const moved = takeOver(search, lot, wanted);
    if (moved === 0) continue;
    row[lot] = row[lot]! + moved;
    return moved;
  }
  return 0;
}

/** Another line hands over pieces of the lot it can replace by others. */
function takeOver(search: { flow: Flow; seen: Set<number> }, lot: number, wanted: number): number {
  for (let other = 0; other < search.flow.lines.length; other++) {
    const row = search.flow.given[other]!;
    const held = row[lot]!;
    if (held === 0 || search.seen.has(other)) continue;
    const moved = augment(search, other, Math.min(wanted, held));
    if (moved === 0) continue;
    row[lot] = row[lot]! - moved;
    return moved;
  }
  return 0;
}

/** The part itself before its alternates, so that a surplus is named by the alternate. */
function usableLots(flow: Flow, line: Required): number[] {
  const fitting = flow.lots.flatMap((lot, index) => (fits(line, lot) ? [index] : []));
  const own = (index: number) => flow.lots[index]!.part === line.part;
  return [...fitting.filter(own), ...fitting.filter((index) => !own(index))];
}

function fits(line: Required, lot: Pieces): boolean {
  const partFits = lot.part === line.part || (line.acceptable ?? []).includes(lot.part);
  const positionFits = line.position === undefined || line.position === lot.position;
  const sourceFits = line.source === undefined || line.source === 'any' || line.source === lot.origin;
  return partFits && positionFits && sourceFits;
}

function merged(unit: Pieces[]): Pieces[] {
  const lots = new Map<string, Pieces>();
  for (const pieces of unit) {
    const key = JSON.stringify([pieces.part, pieces.position ?? null, pieces.origin]);
    const known = lots.get(key);
    if (known === undefined) lots.set(key, { ...pieces });
    else known.quantity += pieces.quantity;
  }
  return [...lots.values()];
}

function short(line: Required, quantity: number): Closing['missing'] {
  if (quantity <= 0) return [];
  const { part, position } = line;
  return [position === undefined ? { part, quantity } : { part, quantity, position }];
}

function unused(flow: Flow): Closing['unexpected'] {
  const byPart = new Map<string, number>();
  flow.lots.forEach(({ part }, index) => {
    const free = flow.free[index]!;
    if (free > 0) byPart.set(part, (byPart.get(part) ?? 0) + free);
  });
  return [...byPart].map(([part, quantity]) => ({ part, quantity }));
}
