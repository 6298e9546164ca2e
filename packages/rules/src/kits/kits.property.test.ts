import { expect, test } from '@jest/globals';
import fc from 'fast-check';
import { close, type KitMovement, type Place, type Required } from './index.ts';

// Source: common practice, no source. The oracle below is a second program: single pieces instead of counted lots, and a search
// through every assignment instead of maximum flow.
type Piece = { part: string; place: Place; position: string | undefined; history: Place[] };

const PLACES: Place[] = ['stock', 'tray', 'rack', 'unit', 'scrap', 'customer'];
const parts = fc.constantFrom('A', 'B');
const positions = fc.constantFrom('p', 'q');

const step = fc.record({
  part: parts,
  from: fc.constantFrom(...PLACES),
  to: fc.constantFrom(...PLACES),
  quantity: fc.integer({ min: 1, max: 2 }),
  position: positions,
});
const line: fc.Arbitrary<Required> = fc
  .record({
    part: parts,
    quantity: fc.integer({ min: 0, max: 2 }),
    least: fc.integer({ min: 0, max: 2 }),
    position: fc.option(positions),
    source: fc.constantFrom('new' as const, 'reused' as const, 'any' as const),
    alternate: fc.boolean(),
    asNeeded: fc.boolean(),
  })
  .map((l) => ({
    part: l.part,
    quantity: l.quantity,
    source: l.source,
    ...(l.asNeeded ? { minimum: Math.min(l.least, l.quantity) } : {}),
    ...(l.position === null ? {} : { position: l.position }),
    ...(l.alternate ? { acceptable: [l.part === 'A' ? 'B' : 'A'] } : {}),
  }));

/** Keeps the legal steps: tray, rack and scrap hold what leaves them. Every move at the unit names its position. */
function legal(steps: KitMovement[]): KitMovement[] {
  const held = new Map<string, number>();
  return steps.flatMap((s) => {
    const count = (place: Place) => held.get(`${s.part} ${place}`) ?? 0;
    const unlimited = s.from === 'stock' || s.from === 'customer' || s.from === 'unit';
    // Old parts in the tray have tests of their own; here the tray holds only what came from stock.
    const mixes = s.to === 'tray' && s.from !== 'stock';
    if (s.from === s.to || mixes || (!unlimited && count(s.from) < s.quantity)) return [];
    held.set(`${s.part} ${s.from}`, count(s.from) - s.quantity);
    held.set(`${s.part} ${s.to}`, count(s.to) + s.quantity);
    return [s];
  });
}

function playPieces(movements: KitMovement[]): Piece[] {
  const pieces: Piece[] = [];
  for (const { part, quantity, from, to, position } of movements) {
    for (let n = 0; n < quantity; n++) {
      const there = pieces.filter(
        (p) => p.part === part && p.place === from && (from !== 'unit' || p.position === position),
      );
      // Last in, first out; a piece not known yet was in stock, with the customer, or in the unit before.
      const piece = there.at(-1) ?? { part, place: from, position, history: [] };
      if (pieces.includes(piece)) pieces.splice(pieces.indexOf(piece), 1);
      pieces.push({
        ...piece,
        place: to,
        position: to === 'unit' ? position : undefined,
        history: [...piece.history, from],
      });
    }
  }
  return pieces;
}

function satisfies(piece: Piece, l: Required): boolean {
  const part = piece.part === l.part || (l.acceptable ?? []).includes(piece.part);
  const position = l.position === undefined || l.position === piece.position;
  const cameFrom = piece.history.at(-1);
  const source =
    l.source === 'any' || (l.source === 'new' && cameFrom === 'tray') || (l.source === 'reused' && cameFrom === 'rack');
  return part && position && source;
}

/** Can every piece be given to a line, every line ending between its least and its most? */
function assignable(pieces: Piece[], required: Required[], counts: number[]): boolean {
  const [piece, ...rest] = pieces;
  if (piece === undefined) return required.every((l, i) => counts[i]! >= (l.minimum ?? l.quantity));
  return required.some(
    (l, i) =>
      satisfies(piece, l) && counts[i]! < l.quantity && assignable(rest, required, counts.with(i, counts[i]! + 1)),
  );
}

const total = (rows: { quantity: number }[]) => rows.reduce((sum, row) => sum + row.quantity, 0);

test('closed exactly when tray and rack are empty and the unit equals the list; every leftover is named', () => {
  let closedOnes = 0;
  fc.assert(
    fc.property(fc.array(step, { maxLength: 14 }), fc.array(line, { maxLength: 4 }), (steps, required) => {
      const movements = legal(steps);
      const pieces = playPieces(movements);
      const inUnit = pieces.filter((p) => p.place === 'unit');
      const result = close({ required, movements });
      for (const place of ['tray', 'rack'] as const)
        for (const part of ['A', 'B']) {
          const quantity = pieces.filter((p) => p.part === part && p.place === place).length;
          const rows = result.leftOver.filter((row) => row.part === part && row.place === place);
          expect(rows).toEqual(quantity > 0 ? [{ part, quantity, place }] : []);
        }
      const whole = assignable(
        inUnit,
        required,
        required.map(() => 0),
      );
      expect(result.missing.length + result.unexpected.length === 0).toBe(whole);
      expect(result.closed).toBe(whole && result.leftOver.length === 0);
      const least = total(required.map((l) => ({ quantity: l.minimum ?? l.quantity })));
      // What is used on lines is everything in the unit but the unexpected; it covers all least quantities but the missing.
      expect(inUnit.length - total(result.unexpected)).toBeGreaterThanOrEqual(least - total(result.missing));
      if (result.closed) closedOnes++;
    }),
    { numRuns: 2000 },
  );
  expect(closedOnes).toBeGreaterThan(20); // the property would be empty if nothing ever closed
});

test('when every piece was put in for a line that takes it, the build closes in whatever order the lines stand', () => {
  const piece = fc.record({
    part: parts,
    position: positions,
    from: fc.constantFrom('tray' as const, 'rack' as const),
  });
  const loosen = fc.record({ part: fc.boolean(), position: fc.boolean(), source: fc.boolean() });
  const lines = fc.array(fc.tuple(piece, loosen, fc.nat()), { minLength: 2, maxLength: 9 });
  fc.assert(
    fc.property(lines, (made) => {
      const movements = made.flatMap(([{ part, position, from }]): KitMovement[] => [
        { part, quantity: 1, position, from: from === 'tray' ? 'stock' : 'unit', to: from },
        { part, quantity: 1, position, from, to: 'unit' },
      ]);
      const off = movements.filter((m) => m.from === 'unit' || m.from === 'stock'); // teardown and pulling come first
      const on = movements.filter((m) => m.to === 'unit');
      const required = made
        .toSorted((a, b) => a[2] - b[2])
        .map(([{ part, position, from }, loose]): Required => {
          return {
            part,
            quantity: 1,
            ...(loose.part ? { acceptable: ['A', 'B'] } : {}),
            ...(loose.position ? {} : { position }),
            source: loose.source ? 'any' : from === 'tray' ? 'new' : 'reused',
          };
        });
      expect(close({ required, movements: [...off, ...on] })).toMatchObject({ closed: true });
    }),
    { numRuns: 500 },
  );
});

test('a whole teardown and build always closes, and any one step left out keeps it open', () => {
  const build = fc.array(fc.record({ part: parts, reused: fc.boolean() }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(build, fc.nat(), (places, pick) => {
      const required = places.map(({ part, reused }, i): Required => {
        return { part, quantity: 1, position: `at-${i}`, source: reused ? 'reused' : 'new' };
      });
      const movements = places.flatMap(({ part, reused }, i): KitMovement[] => {
        const one = { part, quantity: 1, position: `at-${i}` };
        const off: KitMovement = { ...one, from: 'unit', to: 'rack' };
        const back: KitMovement[] = [{ ...one, from: 'rack', to: 'unit' }];
        const fresh: KitMovement[] = [
          { ...one, from: 'rack', to: 'scrap' },
          { ...one, from: 'stock', to: 'tray' },
          { ...one, from: 'tray', to: 'unit' },
        ];
        return [off, ...(reused ? back : fresh)];
      });
      expect(close({ required, movements }).closed).toBe(true);
      const last = movements.flatMap((m, i) => (m.to === 'unit' || m.to === 'scrap' ? [i] : []));
      const without = movements.toSpliced(last[pick % last.length]!, 1);
      expect(close({ required, movements: without }).closed).toBe(false);
    }),
  );
});
