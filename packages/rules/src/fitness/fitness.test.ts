import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Check, inDoubt, isGood, type Reading, standingsOf } from './index.ts';

const at = (clock: string, day = '2026-03-02') => ({ at: Date.parse(`${day}T${clock}:00Z`), day });
const reading = (clock: string, day?: string, good = true): Reading => ({ name: 'cadmium', ...at(clock, day), good });
const hours: Check = { name: 'cadmium', due: { by: 'hours', every: 8 } };
const days: Check = { name: 'cadmium', due: { by: 'days', every: 7 } };
const daily: Check = { name: 'cadmium', due: { by: 'day-of-use' } };
const stateOf = (check: Check, readings: Reading[], moment: { at: number; day: string }) =>
  standingsOf([check], readings, moment)[0]?.state;

describe('a check of a tank or a test system', () => {
  it('is missing until it was made', () => {
    expect(stateOf(hours, [], at('10:00'))).toBe('missing');
    expect(stateOf(hours, [reading('10:01')], at('10:00'))).toBe('missing');
  });
  it('holds to its very last minute and no longer', () => {
    expect(stateOf(hours, [reading('08:00')], at('16:00'))).toBe('fit');
    expect(stateOf(hours, [reading('08:00')], at('16:01'))).toBe('overdue');
  });
  it('by days holds through its last day, also over the end of a month', () => {
    expect(stateOf(days, [reading('23:00', '2026-02-25')], at('23:59', '2026-03-04'))).toBe('fit');
    expect(stateOf(days, [reading('23:00', '2026-02-25')], at('00:00', '2026-03-05'))).toBe('overdue');
  });
  it('of the day counts on that day alone, from the moment it was made', () => {
    expect(stateOf(daily, [reading('07:00')], at('23:59'))).toBe('fit');
    expect(stateOf(daily, [reading('07:00')], at('06:59'))).toBe('missing');
    expect(stateOf(daily, [reading('07:00', '2026-03-01')], at('07:00'))).toBe('missing');
  });
  it('that was bad shuts it until a good one', () => {
    const readings = [reading('07:00'), reading('09:00', undefined, false), reading('10:00')];
    expect(stateOf(hours, readings, at('08:59'))).toBe('fit');
    expect(stateOf(hours, readings, at('09:30'))).toBe('out');
    expect(stateOf(hours, readings, at('10:00'))).toBe('fit');
  });
  it('does not care in which order readings were entered, nor for those after the moment', () => {
    const some = fc.array(fc.record({ at: fc.integer({ min: 0, max: 1e9 }), good: fc.boolean() }), { maxLength: 20 });
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 0, max: 1e9 }), { maxLength: 20 }), some, (times, later) => {
        const readings = times.map((when, index) => ({
          name: 'cadmium',
          at: when,
          day: '2026-03-02',
          good: index % 2 === 0,
        }));
        const after = later.map((one) => ({
          name: 'cadmium',
          at: one.at + 1e9 + 1,
          day: '2026-03-02',
          good: one.good,
        }));
        const moment = { at: 1e9, day: '2026-03-02' };
        const plain = standingsOf([hours], readings, moment);
        expect(standingsOf([hours], [...after, ...readings].reverse(), moment)).toEqual(plain);
      }),
    );
  });
  it('refuses an interval of nothing', () => {
    expect(() => standingsOf([{ name: 'x', due: { by: 'hours', every: 0 } }], [], at('10:00'))).toThrow(
      /more than nothing/,
    );
  });
});

describe('what a bad result puts in doubt', () => {
  it('reaches back to the last good one and forward to the next', () => {
    const readings = [
      { at: 1, good: true },
      { at: 3, good: false },
      { at: 5, good: false },
      { at: 9, good: true },
    ];
    expect(inDoubt(readings, 5)).toEqual({ after: 1, before: 9 });
    expect(inDoubt(readings.slice(1, 3), 5)).toEqual({ after: undefined, before: undefined });
  });
});

describe('a result', () => {
  it('on its limit is good, beside it is not', () => {
    expect(['999.9', '1000', '1000.0'].map((value) => isGood(value, { low: '1000' }))).toEqual([false, true, true]);
    expect(['2', '2.01', ''].map((value) => isGood(value, { high: '2' }))).toEqual([true, false, false]);
  });
  it('to be confirmed is good when it is yes', () => {
    expect([isGood('yes', { confirm: true }), isGood('no', { confirm: true }), isGood('1', { confirm: true })]).toEqual(
      [true, false, false],
    );
  });
});
