import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { fillPlaces, type Piece, type Place, type Weight } from './index.ts';

const even = (count: number, room: { mass: number; pieces: number }): Place[] =>
  Array.from({ length: count }, (_, i) => ({ name: `H${i + 1}`, angle: (360 * i) / count, ...room }));
const catalogue: Piece[] = [
  { part: 'bolt', mass: 6.2, onHand: 8 },
  { part: 'washer', mass: 2.1, onHand: 20 },
  { part: 'thin washer', mass: 0.9, onHand: 20 },
];
const left = (asked: Weight, places: Place[], fillings: { place: string; mass: number }[]) => {
  const vector = (mass: number, degrees: number) => [
    mass * Math.cos((degrees * Math.PI) / 180),
    mass * Math.sin((degrees * Math.PI) / 180),
  ];
  const sum = fillings.map(({ place, mass }) => vector(mass, places.find(({ name }) => name === place)?.angle ?? 0));
  const [x = 0, y = 0] = vector(-asked.mass, asked.angle);
  return Math.hypot(x + sum.reduce((n, [a = 0]) => n + a, 0), y + sum.reduce((n, [, b = 0]) => n + b, 0));
};

describe('whole pieces of stock in the places of a propeller', () => {
  it('takes the pieces that leave least in the two places beside the direction', () => {
    const asked = { mass: 14.5, angle: 20 };
    const places = even(12, { mass: 30, pieces: 6 });
    const { fillings, residual } = fillPlaces(asked, { places, catalogue, mostPlaces: 4, mostMass: 60 });
    expect(fillings.map(({ place }) => place).sort()).toEqual(['H1', 'H2']);
    expect(residual.mass).toBeLessThan(0.5);
    expect(left(asked, places, fillings)).toBeCloseTo(residual.mass, 9);
  });

  it('goes on into other places where two are full, and tells what cannot be placed', () => {
    const places = even(12, { mass: 7, pieces: 3 });
    const limits = { places, catalogue, mostMass: 100 };
    const two = fillPlaces({ mass: 20, angle: 45 }, { ...limits, mostPlaces: 2 });
    const four = fillPlaces({ mass: 20, angle: 45 }, { ...limits, mostPlaces: 4 });
    expect(two.fillings).toHaveLength(2);
    expect(four.fillings).toHaveLength(4);
    expect(four.residual.mass).toBeLessThan(1);
    expect(two.residual.mass).toBeGreaterThan(7);
    expect(fillPlaces({ mass: 24, angle: 45 }, { ...limits, mostPlaces: 0 }).residual).toEqual({
      mass: expect.closeTo(24, 9),
      angle: expect.closeTo(225, 9),
    });
  });

  it('never goes beyond a limit or the stock, never leaves more than nothing would, and tells the rest', () => {
    const request = fc.record({
      asked: fc.record({ mass: fc.double({ min: 0, max: 80, noNaN: true }), angle: fc.integer({ min: 0, max: 359 }) }),
      count: fc.integer({ min: 1, max: 24 }),
      room: fc.record({ mass: fc.integer({ min: 1, max: 40 }), pieces: fc.integer({ min: 1, max: 6 }) }),
      onHand: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
      mostPlaces: fc.integer({ min: 1, max: 5 }),
      mostMass: fc.integer({ min: 1, max: 90 }),
    });
    fc.assert(
      fc.property(request, ({ asked, count, room, onHand, mostPlaces, mostMass }) => {
        const places = even(count, room);
        const stock = catalogue.map((piece, i) => ({ ...piece, onHand: onHand[i] ?? 0 }));
        const { fillings, residual } = fillPlaces(asked, { places, catalogue: stock, mostPlaces, mostMass });
        expect(fillings.length).toBeLessThanOrEqual(mostPlaces);
        expect(new Set(fillings.map(({ place }) => place)).size).toBe(fillings.length);
        expect(fillings.reduce((sum, { mass }) => sum + mass, 0)).toBeLessThanOrEqual(mostMass + 1e-6);
        for (const { mass, pieces } of fillings) {
          expect(mass).toBeLessThanOrEqual(room.mass + 1e-6);
          expect(pieces.reduce((sum, piece) => sum + piece.count, 0)).toBeLessThanOrEqual(room.pieces);
        }
        for (const { part, onHand: there } of stock) {
          const used = fillings.flatMap(({ pieces }) => pieces).filter((piece) => piece.part === part);
          expect(used.reduce((sum, piece) => sum + piece.count, 0)).toBeLessThanOrEqual(there);
        }
        expect(residual.mass).toBeLessThanOrEqual(asked.mass + 1e-9);
        expect(left(asked, places, fillings)).toBeCloseTo(residual.mass, 6);
      }),
      { numRuns: 300 },
    );
  });

  it('is as good as any filling of two places on that side, tried one by one', () => {
    const request = fc.record({ mass: fc.integer({ min: 1, max: 16 }), angle: fc.integer({ min: 0, max: 359 }) });
    const places = even(6, { mass: 20, pieces: 2 });
    const stock = catalogue.slice(0, 2);
    const fills = [0, 1, 2].flatMap((a) => [0, 1, 2].filter((b) => a + b <= 2).map((b) => a * 6.2 + b * 2.1));
    fc.assert(
      fc.property(request, (asked) => {
        const { residual } = fillPlaces(asked, { places, catalogue: stock, mostPlaces: 2, mostMass: 100 });
        let best = asked.mass;
        const apart = ({ angle }: Place) => Math.abs(((angle - asked.angle + 540) % 360) - 180);
        const side = places.filter((place) => apart(place) < 90);
        for (const a of side)
          for (const b of side)
            if (a !== b)
              for (const first of fills)
                for (const second of fills) {
                  const tried = [
                    { place: a.name, mass: first },
                    { place: b.name, mass: second },
                  ];
                  best = Math.min(best, left(asked, places, tried));
                }
        expect(residual.mass).toBeLessThanOrEqual(best + 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('takes fewer pieces where what they leave cannot be read', () => {
    const places = even(12, { mass: 30, pieces: 6 });
    const limits = { places, catalogue, mostPlaces: 4, mostMass: 60 };
    const pieces = (enough: number) => {
      const { fillings, residual } = fillPlaces({ mass: 15, angle: 25 }, { ...limits, enough });
      return [fillings.flatMap((one) => one.pieces).reduce((sum, { count }) => sum + count, 0), residual.mass] as const;
    };
    const [[many, least], [few, left]] = [pieces(0), pieces(0.8)];
    expect(few).toBeLessThan(many);
    expect(left).toBeGreaterThan(least);
    expect(left).toBeLessThanOrEqual(0.8);
    // Already near enough: nothing is placed.
    expect(fillPlaces({ mass: 0.5, angle: 25 }, { ...limits, enough: 0.8 }).fillings).toEqual([]);
  });

  it('refuses pieces without a mass and a propeller without places', () => {
    const refused = (options: object, code: string) =>
      expect(() =>
        fillPlaces(
          { mass: 5, angle: 0 },
          { places: even(4, { mass: 9, pieces: 3 }), catalogue, mostPlaces: 2, mostMass: 9, ...options },
        ),
      ).toThrow(expect.objectContaining({ code }));
    refused({ catalogue: [{ part: 'bolt', mass: 0, onHand: 3 }] }, 'not-a-piece');
    refused({ places: [] }, 'no-holes');
  });
});
