import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { adviseStatic, judgeStatic, proposeStatic, type StaticEntry, type StaticSpec, sayStatic } from './index.ts';

const ring = (count: number, pieces: number) =>
  Array.from({ length: count }, (_, i) => ({
    ...{ name: `P${i + 1}`, angle: String((i * 360) / count), radius: '5', pieces, stack: '0.5' },
  }));
const spec: StaticSpec = {
  ...{ unit: 'g-in', blades: 3, places: ring(6, 6), limit: { by: 'manual', moment: '45' } },
  hardware: [{ part: 'W-6', mass: '6', thickness: '0.063' }],
};
const level = { heavy: 'level' };
const entry = (more: Partial<StaticEntry> = {}): StaticEntry => ({
  before: { vertical: { heavy: 'right', weight: '20', radius: '6' }, horizontal: level },
  ...{ found: [], placed: [], after: { vertical: level, horizontal: level } },
  ...more,
});

describe('the correction of a static balance', () => {
  it('goes on the light side, in whole pieces of the places there are', () => {
    // The right is heavy by 120 g-in: P5 and P6 at 240° and 300° share it; (2 + 2)·30·cos 30° = 103.9 leaves 16.1.
    const { fillings, left, reachable } = adviseStatic(entry(), spec);
    expect(fillings.map(({ place, pieces }) => [place, pieces[0]?.count])).toEqual([
      ['P5', 2],
      ['P6', 2],
    ]);
    expect(left.mass).toBeCloseTo(120 - 60 * Math.sqrt(3), 9);
    expect(left.angle).toBeCloseTo(90, 6);
    expect(reachable).toBe(true);
  });
  it('counts what was on it: what is proposed is all that it has then', () => {
    const found = [{ place: 'P2', part: 'W-6', pieces: 4 }];
    const alone = { vertical: level, horizontal: level };
    // Level with those four: with none it would need them again.
    expect(adviseStatic({ before: alone, found }, spec).fillings).toMatchObject([
      { place: 'P2', pieces: [{ part: 'W-6', count: 4 }] },
    ]);
  });
  it('says how near the places come where they do not reach', () => {
    const few = { ...spec, places: ring(6, 1) };
    expect(adviseStatic(entry(), few).sentence).toBe(
      'Not reachable with the places there are: nearest leaves 68.04 g-in at 90°, limit 45.',
    );
    const wrongSide = { ...spec, places: spec.places.slice(1, 3) };
    expect(adviseStatic(entry(), wrongSide).sentence).toMatch(
      /^No place is on the light side: nearest leaves 120 g-in/,
    );
    expect(adviseStatic(entry(), { ...spec, places: [], hardware: [] }).sentence).toMatch(/no places for weights/);
  });
});

describe('a static balance', () => {
  const after = (weight: string) => ({
    vertical: { heavy: 'left', weight, radius: '5' },
    horizontal: { heavy: 'blade-1', weight: '9', radius: '5' },
  });
  it('by the manual is good at the very limit of each reading', () => {
    expect(judgeStatic(entry({ after: after('9') }), spec)).toMatchObject({ good: true, limit: 45 });
    expect(judgeStatic(entry({ after: after('9.0001') }), spec).reasons).toEqual([
      'What is left with blade 1 up is 45.01 g-in; 45 g-in is allowed.',
    ]);
  });
  it('by a grade goes by both readings as one vector', () => {
    // 1000·6.3·35 / (2π·2700 / 60) = 779.86 g·mm = 30.70 g·in.
    const iso = { ...spec, limit: { by: 'iso-21940-11', grade: '6.3', rpm: '2700', massKg: '35' } } as const;
    expect(judgeStatic(entry(), iso).limit).toBeCloseTo(779.859 / 25.4, 4);
    const both = { heavy: 'blade-1', weight: '5', radius: '5' };
    const readings = { vertical: { ...both, heavy: 'left' }, horizontal: both };
    expect(judgeStatic(entry({ after: readings }), iso).reasons).toEqual([
      'What is left is 35.36 g-in; 30.7 g-in is allowed.',
    ]);
  });
  it('of which the weights explain nothing is looked at again', () => {
    const placed = [
      { place: 'P5', part: 'W-6', pieces: 2 },
      { place: 'P6', part: 'W-6', pieces: 2 },
    ];
    const right = entry({
      placed,
      after: { vertical: { heavy: 'right', weight: '3', radius: '5' }, horizontal: level },
    });
    expect(judgeStatic(right, spec).isOdd).toBe(false);
    // Put on the heavy side by mistake, and read as if they were not.
    const wrong = entry({ placed: placed.map((one, i) => ({ ...one, place: i === 0 ? 'P2' : 'P3' })) });
    const verdict = judgeStatic(wrong, spec);
    expect(verdict.isOdd).toBe(true);
    expect(sayStatic(wrong, spec, verdict)).toContainEqual({
      name: 'by the weights',
      value: '223.93 g-in at 90° is expected: look at sides and places again',
    });
  });
  it.each<[string, Partial<StaticEntry>, string]>([
    ['no-such-place', { placed: [{ place: 'P9', part: 'W-6', pieces: 1 }] }, 'placed[0].place'],
    ['no-such-piece', { placed: [{ place: 'P1', part: 'W-7', pieces: 1 }] }, 'placed[0].part'],
    ['too-many-pieces', { placed: [{ place: 'P1', part: 'W-6', pieces: 7 }] }, 'placed[0].pieces'],
    ['same-piece-twice', { placed: [1, 1].map((pieces) => ({ place: 'P1', part: 'W-6', pieces })) }, 'placed[1]'],
    ['reading-missing', { after: { vertical: { heavy: 'left' }, horizontal: level } }, 'after.vertical.weight'],
    ['reading-missing', { after: { vertical: { heavy: 'up' }, horizontal: level } }, 'after.vertical.heavy'],
    [
      'reading-unlike',
      { after: { vertical: { heavy: 'level', weight: '1' }, horizontal: level } },
      'after.vertical.heavy',
    ],
    ['reading-impossible', { after: after('180') }, 'after.vertical.weight'],
    ['reading-impossible', { before: after('900') }, 'before.vertical.weight'],
  ])('with %s is refused', (code, more, path) => {
    expect(() => judgeStatic(entry(more), spec)).toThrow(expect.objectContaining({ code, path }));
  });
  it('with a stack longer than allowed is refused, to the very end of a thickness', () => {
    const thick = { ...spec, hardware: [{ part: 'W-6', mass: '6', thickness: '0.1' }] };
    const placed = (pieces: number) => entry({ placed: [{ place: 'P1', part: 'W-6', pieces }] });
    expect(() => judgeStatic(placed(6), thick)).toThrow('P1 is stacked 0.6 long; 0.5 is the most.');
    expect(judgeStatic(placed(5), thick).good).toBe(true);
  });
});

describe('whole pieces in places', () => {
  const place = fc.record({
    angle: fc.integer({ min: 0, max: 359 }),
    radius: fc.integer({ min: 2, max: 8 }),
    pieces: fc.integer({ min: 0, max: 4 }),
    stack: fc.option(fc.integer({ min: 0, max: 6 }), { nil: undefined }),
  });
  const given = fc.record({
    places: fc.array(place, { minLength: 1, maxLength: 4 }),
    hardware: fc.array(fc.record({ mass: fc.integer({ min: 1, max: 9 }), thickness: fc.integer({ min: 0, max: 2 }) }), {
      minLength: 1,
      maxLength: 2,
    }),
    asked: fc.record({ mass: fc.integer({ min: 1, max: 200 }), angle: fc.integer({ min: 0, max: 359 }) }),
    enough: fc.integer({ min: 0, max: 10 }),
  });

  it('leave as little, in as few pieces, as the best of every filling there is', () => {
    fc.assert(
      fc.property(given, ({ places, hardware, asked, enough }) => {
        const named = {
          places: places.map((one, i) => ({ ...one, name: `P${i}` })),
          hardware: hardware.map((one, i) => ({ ...one, part: `W${i}` })),
        };
        const { fillings, residual } = proposeStatic(asked, { ...named, enough });
        const pieces = fillings.flatMap((one) => one.pieces).reduce((sum, { count }) => sum + count, 0);
        const best = bestOfEvery(asked, named, enough);
        expect(Math.max(residual.mass, enough)).toBeCloseTo(best.cost, 6);
        expect(pieces).toBe(best.pieces);
        for (const filling of fillings) {
          const room = named.places.find(({ name }) => name === filling.place)!;
          expect(filling.pieces.reduce((sum, { count }) => sum + count, 0)).toBeLessThanOrEqual(room.pieces);
          expect(filling.stack).toBeLessThanOrEqual(room.stack ?? Infinity);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('of many kinds in many places still leave no more than two places alone would', () => {
    const places = Array.from({ length: 12 }, (_, i) => ({ name: `P${i}`, angle: i * 30, radius: 5, pieces: 12 }));
    const hardware = [1.1, 2.3, 5.7].map((mass, i) => ({ part: `W${i}`, mass, thickness: 0 }));
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (mass, angle) => {
          const { residual } = proposeStatic({ mass, angle }, { places, hardware });
          const away = (one: { angle: number }) => Math.abs(((one.angle - angle + 540) % 360) - 180);
          const near = places.toSorted((a, b) => away(a) - away(b)).slice(0, 2);
          expect(residual.mass).toBeLessThanOrEqual(
            proposeStatic({ mass, angle }, { places: near, hardware }).residual.mass + 1e-6,
          );
        },
      ),
      { numRuns: 40 },
    );
  });
});

type Given = {
  places: { angle: number; radius: number; pieces: number; stack: number | undefined }[];
  hardware: { mass: number; thickness: number }[];
};

/** Every count of every piece in every place less than a quarter turn away, one by one. */
function bestOfEvery(asked: { mass: number; angle: number }, { places, hardware }: Given, enough: number) {
  const rad = (degrees: number) => (degrees * Math.PI) / 180;
  const open = places.filter(({ angle }) => Math.cos(rad(angle - asked.angle)) > 1e-9);
  let best = { cost: Infinity, pieces: Infinity };
  const tryOn = (at: number, left: { re: number; im: number }, used: number): void => {
    const here = open[at];
    if (!here) {
      const cost = Math.max(Math.hypot(left.re, left.im), enough);
      if (cost < best.cost - 1e-7 || (cost < best.cost + 1e-7 && used < best.pieces)) best = { cost, pieces: used };
      return;
    }
    for (let first = 0; first <= here.pieces; first += 1)
      for (let second = 0; second <= (hardware.length > 1 ? here.pieces - first : 0); second += 1) {
        const stack = first * hardware[0]!.thickness + second * (hardware[1]?.thickness ?? 0);
        if (stack > (here.stack ?? Infinity)) continue;
        const moment = here.radius * (first * hardware[0]!.mass + second * (hardware[1]?.mass ?? 0));
        const turn = rad(here.angle);
        tryOn(
          at + 1,
          { re: left.re - moment * Math.cos(turn), im: left.im - moment * Math.sin(turn) },
          used + first + second,
        );
      }
  };
  tryOn(0, { re: asked.mass * Math.cos(rad(asked.angle)), im: asked.mass * Math.sin(rad(asked.angle)) }, 0);
  return best;
}
