import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type FreezerMove, outTimeOf } from './index.ts';

const hour = 3_600_000;
const moves = (...hours: number[]): FreezerMove[] =>
  hours.map((at, index) => ({ at: at * hour, to: index % 2 === 0 ? 'out' : 'in' }));

describe('time out of the freezer', () => {
  it('adds up over every time it was out, and stops while it is frozen', () => {
    expect(outTimeOf(moves(0, 3, 10, 12), { limit: 6 * hour, at: 99 * hour })).toEqual({
      ...{ out: 5 * hour, since: undefined, runsOutAt: undefined, isOver: false },
    });
  });
  it('says when it runs out if the lot stays out; the limit itself is still good', () => {
    const log = moves(0, 3, 10);
    expect(outTimeOf(log, { limit: 6 * hour, at: 13 * hour })).toMatchObject({ runsOutAt: 13 * hour, isOver: false });
    expect(outTimeOf(log, { limit: 6 * hour, at: 13 * hour + 1 }).isOver).toBe(true);
  });
  it('at an earlier moment is what it was then', () => {
    expect(outTimeOf(moves(0, 3, 10, 12), { limit: 6 * hour, at: 11 * hour })).toMatchObject({
      ...{ out: 4 * hour, since: 10 * hour },
    });
  });
  it('never goes back, is never more than the time that passed, and once over stays over', () => {
    const logs = fc.array(fc.integer({ min: 0, max: 1_000_000 }), { maxLength: 20 }).map((gaps) => {
      let at = 0;
      return gaps.map((gap, index): FreezerMove => {
        at += gap;
        return { at, to: index % 2 === 0 ? 'out' : 'in' };
      });
    });
    const moment = fc.integer({ min: 0, max: 30_000_000 });
    fc.assert(
      fc.property(logs, moment, moment, (log, a, b) => {
        const [early, late] = [Math.min(a, b), Math.max(a, b)];
        const of = (at: number) => outTimeOf(log, { limit: 500_000, at });
        expect(of(late).out).toBeGreaterThanOrEqual(of(early).out);
        expect(of(late).out - of(early).out).toBeLessThanOrEqual(late - early);
        if (of(early).isOver) expect(of(late).isOver).toBe(true);
        const { runsOutAt, isOver } = of(late);
        if (runsOutAt !== undefined) expect(late > runsOutAt).toBe(isOver);
      }),
    );
  });
  it('needs a log that goes out and in by turns, and a limit', () => {
    expect(() => outTimeOf([{ at: 0, to: 'in' }], { limit: 1, at: 1 })).toThrow(/in turn/);
    expect(() => outTimeOf(moves(5, 3), { limit: 1, at: 9 })).toThrow(/in turn/);
    expect(() => outTimeOf([], { limit: 0, at: 1 })).toThrow(/more than nothing/);
  });
});
