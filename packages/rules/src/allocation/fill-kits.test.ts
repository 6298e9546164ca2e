import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { fillKits, type KitToFill } from './index.ts';

const kit = (id: string, value: number, ...lines: [string, number][]): KitToFill => ({
  id,
  value,
  lines: lines.map(([from, quantity], at) => ({ id: `${id}${at}`, quantity, from: from.split('') })),
});

describe('filling kits from lots', () => {
  it('gives a line that may take either lot the one nobody else can use', () => {
    const kits = [kit('X', 5, ['AB', 1]), kit('Y', 4, ['A', 1]), kit('Z', 3, ['A', 1])];
    const answer = fillKits({ kits, lots: { A: 1, B: 1 } });
    expect(answer).toMatchObject({ chosen: ['X', 'Y'], value: 9, bound: 9, optimal: true });
    expect(answer.picks).toEqual([
      { ask: 'X0', lot: 'B', quantity: 1 },
      { ask: 'Y0', lot: 'A', quantity: 1 },
    ]);
    expect(answer.leftOut).toEqual([{ kit: 'Z', isOutbid: true, lacks: [{ ask: 'Z0', quantity: 1 }] }]);
  });

  it('takes the best lot first where nothing is scarce, and says what a kit lacks that the shelf cannot fill', () => {
    const answer = fillKits({ kits: [kit('X', 5, ['AB', 3]), kit('Y', 4, ['C', 2])], lots: { A: 2, B: 2, C: 1 } });
    expect(answer.picks).toEqual([
      { ask: 'X0', lot: 'A', quantity: 2 },
      { ask: 'X0', lot: 'B', quantity: 1 },
    ]);
    expect(answer.leftOut).toEqual([{ kit: 'Y', isOutbid: false, lacks: [{ ask: 'Y0', quantity: 1 }] }]);
  });

  it('sees that three lines on three pairs of lots are short together, though no two are', () => {
    const kits = [kit('X', 5, ['AB', 2]), kit('Y', 4, ['BC', 2]), kit('Z', 3, ['AC', 2])];
    const answer = fillKits({ kits, lots: { A: 2, B: 2, C: 1 } });
    expect(answer).toMatchObject({ chosen: ['X', 'Y'], value: 9, optimal: true });
  });

  it('with no time left answers kits that can be handed out, under a bound that holds', () => {
    const kits = [kit('X', 5, ['AB', 2]), kit('Y', 4, ['BC', 2]), kit('Z', 3, ['AC', 2])];
    const answer = fillKits({ kits, lots: { A: 2, B: 2, C: 1 }, budget: { ms: 0, now: () => 0 } });
    expect(answer.value).toBeLessThanOrEqual(answer.bound);
    expect(answer.bound).toBeGreaterThanOrEqual(9);
  });

  it('refuses a line given twice', () => {
    expect(() => fillKits({ kits: [kit('X', 1, ['A', 1]), kit('X', 1, ['A', 1])], lots: { A: 1 } })).toThrow(
      expect.objectContaining({ code: 'same-id' }),
    );
  });

  it('finds what trying every choice and every way of handing out finds', () => {
    const line = fc.tuple(fc.constantFrom('A', 'B', 'AB', 'BC', 'AC', 'ABC', 'C'), fc.integer({ min: 1, max: 3 }));
    const kits = fc.array(fc.tuple(fc.nat(9), fc.array(line, { minLength: 1, maxLength: 3 })), { maxLength: 6 });
    fc.assert(
      fc.property(kits, fc.record({ A: fc.nat(5), B: fc.nat(5), C: fc.nat(5) }), (drawn, lots) => {
        const given = drawn.map(([value, lines], at) => kit(`K${at}.`, value, ...lines));
        const answer = fillKits({ kits: given, lots });
        expect(answer.value).toBe(best(given, lots));
        expect(answer).toMatchObject({ optimal: true, bound: answer.value });
        expect(faults(given, lots, answer)).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });
});

/** Piece by piece, by exhaustion: an oracle that knows nothing of flows or cuts. */
function canBeHandedOut(pieces: readonly (readonly string[])[], lots: Record<string, number>): boolean {
  const [first, ...rest] = pieces;
  if (!first) return true;
  return first.some((lot) => (lots[lot] ?? 0) > 0 && canBeHandedOut(rest, { ...lots, [lot]: (lots[lot] ?? 0) - 1 }));
}

function best(kits: readonly KitToFill[], lots: Record<string, number>): number {
  const total = Object.values(lots).reduce((sum, one) => sum + one, 0);
  let most = 0;
  for (let chosen = 0; chosen < 2 ** kits.length; chosen += 1) {
    const taken = kits.filter((_, at) => chosen & (1 << at));
    const value = taken.reduce((sum, one) => sum + one.value, 0);
    const pieces = taken.flatMap(({ lines }) =>
      lines.flatMap(({ quantity, from }) => Array.from({ length: quantity }, () => from)),
    );
    if (
      value > most &&
      pieces.length <= total &&
      canBeHandedOut(
        pieces.sort((a, b) => a.length - b.length),
        lots,
      )
    )
      most = value;
  }
  return most;
}

function faults(kits: readonly KitToFill[], lots: Record<string, number>, answer: ReturnType<typeof fillKits>) {
  const used: Record<string, number> = {};
  const given: Record<string, number> = {};
  const lines = new Map(kits.flatMap((each) => each.lines.map((line) => [line.id, { line, kit: each.id }])));
  const found: string[] = [];
  for (const { ask, lot, quantity } of answer.picks) {
    used[lot] = (used[lot] ?? 0) + quantity;
    given[ask] = (given[ask] ?? 0) + quantity;
    if (!lines.get(ask)?.line.from.includes(lot)) found.push(`${ask} takes ${lot}`);
  }
  for (const [lot, quantity] of Object.entries(used)) if (quantity > (lots[lot] ?? 0)) found.push(`${lot} over`);
  for (const [id, { line, kit: of }] of lines)
    if ((given[id] ?? 0) !== (answer.chosen.includes(of) ? line.quantity : 0)) found.push(`${id} not whole`);
  return found;
}
