import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type LifeLimit, lifeVerdict } from './life-limit.ts';

const unknown = 'unknown' as const;

describe('a life-limited part', () => {
  it.each([
    ['below its hours', { hoursTenths: 85_000 }, { hoursTenths: 84_999, cycles: unknown }, 'within', []],
    ['at its hours', { hoursTenths: 85_000 }, { hoursTenths: 85_000, cycles: unknown }, 'reached', ['hoursTenths']],
    ['over its cycles', { cycles: 4_000 }, { hoursTenths: unknown, cycles: 4_001 }, 'reached', ['cycles']],
    [
      'of hours nobody knows',
      { hoursTenths: 85_000 },
      { hoursTenths: unknown, cycles: 12 },
      'unknown',
      ['hoursTenths'],
    ],
    [
      'used up by one while the other is unknown',
      { hoursTenths: 10, cycles: 5 },
      { hoursTenths: unknown, cycles: 5 },
      'reached',
      ['cycles'],
    ],
    [
      'within one while the other is unknown',
      { hoursTenths: 10, cycles: 5 },
      { hoursTenths: 3, cycles: unknown },
      'unknown',
      ['cycles'],
    ],
  ] as const)('%s', (_, limit, used, state, by) => {
    expect(lifeVerdict(limit, used)).toMatchObject({ state, by });
  });

  it.each([
    ['serves out the time after its fifth overhaul of five', { overhauls: 5 }, 'within', { overhauls: 0 }],
    ['is given no sixth', { overhauls: 6 }, 'reached', { overhauls: 0 }],
    ['of overhauls nobody counted is unknown', { overhauls: unknown, overhaulsAtLeast: 5 }, 'unknown', {}],
    ['is over the limit by those on record alone', { overhauls: unknown, overhaulsAtLeast: 6 }, 'reached', {}],
    ['of which nothing is said is unknown', {}, 'unknown', {}],
  ] as const)('limited in overhauls %s', (_, used, state, left) => {
    expect(lifeVerdict({ overhauls: 5 }, { hoursTenths: unknown, cycles: unknown, ...used })).toMatchObject({
      state,
      left,
      by: state === 'within' ? [] : ['overhauls'],
    });
  });

  it('without a limit, or with a fraction of one, is a mistake and not a part without end', () => {
    expect(() => lifeVerdict({}, { hoursTenths: 1, cycles: 1 })).toThrow('hours, cycles or overhauls');
    expect(() => lifeVerdict({ hoursTenths: 0 }, { hoursTenths: 1, cycles: 1 })).toThrow('at least 1');
    expect(() => lifeVerdict({ cycles: 10 }, { hoursTenths: 1, cycles: 1.5 })).toThrow('whole number');
  });

  const some = fc.integer({ min: 1, max: 2_000_000 });
  const total = fc.oneof(fc.integer({ min: 0, max: 2_000_000 }), fc.constant(unknown));
  const limits: fc.Arbitrary<LifeLimit> = fc.oneof(
    fc.record({ hoursTenths: some }),
    fc.record({ cycles: some }),
    fc.record({ hoursTenths: some, cycles: some }),
  );

  it('is within exactly when every limited total is known and below its limit; use and tighter limits never free it', () => {
    const order = ['within', 'unknown', 'reached'];
    fc.assert(
      fc.property(limits, fc.record({ hoursTenths: total, cycles: total }), some, (limit, used, more) => {
        const { state } = lifeVerdict(limit, used);
        const below = (['hoursTenths', 'cycles'] as const).every(
          (each) => limit[each] === undefined || (used[each] !== unknown && used[each] < limit[each]),
        );
        expect(state === 'within').toBe(below);
        const later = {
          hoursTenths: used.hoursTenths === unknown ? unknown : used.hoursTenths + more,
          cycles: used.cycles === unknown ? unknown : used.cycles + more,
        };
        expect(order.indexOf(lifeVerdict(limit, later).state)).toBeGreaterThanOrEqual(order.indexOf(state));
        const tighter = {
          ...limit,
          ...(limit.hoursTenths ? { hoursTenths: Math.max(1, limit.hoursTenths - more) } : {}),
        };
        expect(order.indexOf(lifeVerdict(tighter, used).state)).toBeGreaterThanOrEqual(order.indexOf(state));
      }),
    );
  });
});

describe('a part whose total nobody knows', () => {
  const used = { hoursTenths: unknown, cycles: unknown };

  it('is used up where what is known at least reaches the limit, and unknown below it', () => {
    expect(lifeVerdict({ cycles: 500 }, { ...used, atLeast: { cycles: 500 } })).toMatchObject({
      state: 'reached',
      by: ['cycles'],
    });
    expect(lifeVerdict({ cycles: 500 }, { ...used, atLeast: { cycles: 499 } })).toMatchObject({ state: 'unknown' });
    expect(lifeVerdict({ hoursTenths: 10 }, { ...used, atLeast: { hoursTenths: 11 } })).toMatchObject({
      state: 'reached',
    });
  });
});
