import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { reminderStage, waitAfter } from './index.ts';

const intervals = [180, 90, 30];

describe('when a letter is due', () => {
  it('is when the days left come to an interval, on the day itself too', () => {
    expect(reminderStage(181, { intervals, told: [] })).toBeNull();
    expect(reminderStage(180, { intervals, told: [] })).toBe(180);
    expect(reminderStage(91, { intervals, told: [] })).toBe(180);
    expect(reminderStage(90, { intervals, told: [] })).toBe(90);
    expect(reminderStage(-400, { intervals, told: [] })).toBe(30);
  });

  it('is once for a unit met late, however many intervals it missed', () => {
    expect(reminderStage(12, { intervals, told: [] })).toBe(30);
    expect(reminderStage(12, { intervals, told: [30] })).toBeNull();
  });

  it('is not again when the likely date moves later after a letter, nor after an interval was added above', () => {
    expect(reminderStage(120, { intervals, told: [90] })).toBeNull();
    expect(reminderStage(300, { intervals: [365, ...intervals], told: [180] })).toBeNull();
    expect(reminderStage(29, { intervals, told: [180, 90] })).toBe(30);
  });

  it('tells of a unit at most once at each interval, whichever way its date moves', () => {
    const walk = fc.array(fc.integer({ min: -100, max: 500 }), { maxLength: 40 });
    const some = fc.uniqueArray(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(walk, some, (days, asked) => {
        const told: number[] = [];
        for (const left of days) {
          const stage = reminderStage(left, { intervals: asked, told });
          if (stage === null) continue;
          expect(asked).toContain(stage);
          expect(stage).toBeGreaterThanOrEqual(Math.max(left, ...[Math.min(...asked)]));
          told.push(stage);
        }
        expect(told).toEqual([...new Set(told)].toSorted((a, b) => b - a));
      }),
    );
  });

  it('never leaves a unit within the shortest interval untold', () => {
    const some = fc.uniqueArray(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(some, fc.nat(500), (asked, past) => {
        const least = Math.min(...asked);
        const told = asked.filter((days) => days > least);
        expect(reminderStage(least - past, { intervals: asked, told })).toBe(least);
      }),
    );
  });

  it('refuses what is no number of days', () => {
    expect(() => reminderStage(1.5, { intervals, told: [] })).toThrow('whole number');
    expect(() => reminderStage(1, { intervals: [], told: [] })).toThrow('interval');
    expect(() => reminderStage(1, { intervals: [0], told: [] })).toThrow('interval');
  });
});

describe('how long to wait after a try that failed', () => {
  it('is longer each time, and in the end a person decides', () => {
    const all = Array.from({ length: 9 }, (_, index) => waitAfter(index + 1));
    expect(all).toEqual([1, 5, 15, 60, 240, 720, 1440, 1440, null]);
    expect(() => waitAfter(0)).toThrow('from one');
  });
});
