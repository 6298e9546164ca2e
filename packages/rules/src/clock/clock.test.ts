import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { isForgotten, minutesOf, overlapOf, sharesOf } from './index.ts';

const hour = 3_600_000;
const stretch = fc
  .tuple(fc.integer({ min: 0, max: 100 }), fc.integer({ min: 1, max: 30 }))
  .map(([from, length]) => ({ from, to: from + length }));

describe('a person’s time', () => {
  it('is at one thing at a time: what shares a moment with another is found, what touches is not', () => {
    const morning = { id: 'morning', from: 0, to: 5 };
    expect(overlapOf({ id: 'x', from: 5, to: 9 }, [morning])).toBeUndefined();
    expect(overlapOf({ id: 'x', from: 4, to: 9 }, [morning])).toBe(morning);
    expect(overlapOf({ id: 'x', from: 1, to: 2 }, [morning])).toBe(morning);
    expect(overlapOf({ id: 'x', from: 9 }, [morning])).toBeUndefined();
    expect(overlapOf({ id: 'x', from: 7, to: 8 }, [{ id: 'runs', from: 6 }])).toMatchObject({ id: 'runs' });
    expect(overlapOf({ ...morning, to: 6 }, [morning])).toBeUndefined();
    expect(() => overlapOf({ id: 'x', from: 5, to: 5 }, [])).toThrow(/before it begins/);
  });

  // The oracle counts moments one by one.
  it('overlaps exactly when some moment belongs to both', () => {
    fc.assert(
      fc.property(stretch, stretch, (one, other) => {
        const moments = (of: { from: number; to: number }) =>
          Array.from({ length: of.to - of.from }, (_, index) => of.from + index);
        const shared = moments(one).some((moment) => moments(other).includes(moment));
        expect(overlapOf({ id: 'one', ...one }, [{ id: 'other', ...other }]) !== undefined).toBe(shared);
      }),
    );
  });

  it('counts whole minutes', () => {
    expect(minutesOf({ from: 0, to: 59_999 })).toBe(0);
    expect(minutesOf({ from: 0, to: 60_000 })).toBe(1);
    expect(() => minutesOf({ from: 2, to: 1 })).toThrow(/before it begins/);
    expect(() => minutesOf({ from: Number.NaN, to: 1 })).toThrow(/missing/);
  });

  it('of a load is shared by its parts without losing a minute, no two shares more than one apart', () => {
    expect(sharesOf(10, 4)).toEqual([3, 3, 2, 2]);
    fc.assert(
      fc.property(fc.nat(10_000), fc.integer({ min: 1, max: 60 }), (minutes, among) => {
        const shares = sharesOf(minutes, among);
        expect(shares).toHaveLength(among);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(minutes);
        expect(Math.max(...shares) - Math.min(...shares)).toBeLessThanOrEqual(1);
      }),
    );
    expect(() => sharesOf(10, 0)).toThrow(/one part or more/);
    expect(() => sharesOf(1.5, 2)).toThrow(/whole/);
  });

  it('that runs on past what anyone works at one thing was forgotten', () => {
    expect(isForgotten({ from: 0, now: 12 * hour, mostHours: 12 })).toBe(false);
    expect(isForgotten({ from: 0, now: 12 * hour + 1, mostHours: 12 })).toBe(true);
    expect(() => isForgotten({ from: 0, now: 1, mostHours: 0 })).toThrow(/longest/);
  });
});
