/// <reference path="../replenishment/jstat.d.ts" />
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import jstat from 'jstat';
import { addDays } from '../dates/index.ts';
import { countBand } from './count-band.ts';
import { daysOfMonth, expectedArrivals, type LikelyDates } from './index.ts';
import { chanceBy, cornersOf } from './spread.ts';

const today = '2026-03-02';
const onDay = (day: string): LikelyDates => ({ earliest: day, likely: day, latest: day });
const anyUnit = fc
  .record({ from: fc.integer({ min: -600, max: 900 }), a: fc.nat(300), b: fc.nat(300), open: fc.boolean() })
  .map(
    ({ from, a, b, open }): LikelyDates => ({
      earliest: addDays(today, from),
      likely: addDays(today, from + a),
      latest: open ? null : addDays(today, from + a + b),
    }),
  );

describe('expected arrivals', () => {
  it('count a unit due on a day in that month, as sure as its date', () => {
    const { months, later, undated } = expectedArrivals([onDay('2026-04-30')], { today, months: 3 });
    expect(months).toEqual([
      { month: '2026-03', expected: 0, low: 0, high: 0 },
      { month: '2026-04', expected: 1, low: 1, high: 1 },
      { month: '2026-05', expected: 0, low: 0, high: 0 },
    ]);
    expect({ later, undated }).toEqual({ later: 0, undated: 0 });
  });

  it('spread a unit over the months its three dates span', () => {
    // 10 % by 31 March, 50 % by 30 April, 90 % by 31 May; the first tenth begins a quarter of 30 days before, on 23 March.
    const unit = { earliest: '2026-03-31', likely: '2026-04-30', latest: '2026-05-31' };
    const { months, later } = expectedArrivals([unit], { today, months: 3 });
    expect(months.map(({ expected }) => Math.round(expected * 1000) / 1000)).toEqual([0.1, 0.4, 0.4]);
    expect(later).toBeCloseTo(0.1);
  });

  it('count what is overdue in the current month', () => {
    const units = [onDay('2024-01-01'), onDay('2026-03-01'), onDay('2026-03-02')];
    expect(expectedArrivals(units, { today, months: 1 }).months).toEqual([
      { month: '2026-03', expected: 3, low: 3, high: 3 },
    ]);
  });

  it('leave the late half without a month where nobody can date it', () => {
    const answer = expectedArrivals([{ earliest: '2026-03-10', likely: '2026-03-20', latest: null }], {
      today,
      months: 6,
    });
    expect(answer).toMatchObject({ later: 0, undated: 0.5 });
    expect(answer.months[0]?.expected).toBeCloseTo(0.5);
  });

  it('count a share of the units where the shop assumes one', () => {
    const units = Array.from({ length: 10 }, () => ({ ...onDay('2026-03-20'), comes: 0.5 }));
    const [march] = expectedArrivals(units, { today, months: 1 }).months;
    // Ten coins: at most 3 with odds 0.172, at most 2 with 0.055 (binomial tables), so the band is 3 to 7.
    expect(march).toEqual({ month: '2026-03', expected: 5, low: 3, high: 7 });
  });

  it('add up to the number of units, whatever their dates', () => {
    fc.assert(
      fc.property(fc.array(anyUnit, { maxLength: 60 }), fc.integer({ min: 1, max: 36 }), (units, months) => {
        const answer = expectedArrivals(units, { today, months });
        const sum = answer.months.reduce((total, { expected }) => total + expected, answer.later + answer.undated);
        expect(sum).toBeCloseTo(units.length, 6);
        for (const { expected, low, high } of answer.months) {
          expect(low).toBeLessThanOrEqual(high);
          expect(low).toBeLessThanOrEqual(Math.ceil(expected));
          expect(high).toBeGreaterThanOrEqual(Math.floor(expected));
        }
      }),
    );
  });

  it('never expect fewer by the end of any month when units come sooner, nor in any month when there are more', () => {
    const sum = (units: LikelyDates[], upTo: number) =>
      expectedArrivals(units, { today, months: 24 })
        .months.slice(0, upTo)
        .reduce((total, { expected }) => total + expected, 0);
    const sooner = ({ earliest, likely, latest }: LikelyDates, days: number): LikelyDates => ({
      earliest: addDays(earliest, -days),
      likely: addDays(likely, -days),
      latest: latest === null ? null : addDays(latest, -days),
    });
    fc.assert(
      fc.property(
        fc.array(anyUnit, { minLength: 1, maxLength: 20 }),
        fc.nat(200),
        fc.integer({ min: 1, max: 24 }),
        (units, days, upTo) => {
          expect(
            sum(
              units.map((unit) => sooner(unit, days)),
              upTo,
            ),
          ).toBeGreaterThanOrEqual(sum(units, upTo) - 1e-9);
          const all = expectedArrivals(units, { today, months: 24 }).months;
          const fewer = expectedArrivals(units.slice(1), { today, months: 24 }).months;
          for (const [index, { expected }] of all.entries())
            expect(expected).toBeGreaterThanOrEqual(fewer[index]!.expected - 1e-9);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('are exactly the three odds at the three dates', () => {
    fc.assert(
      fc.property(anyUnit, (unit) => {
        const corners = cornersOf(unit, today);
        const at = (day: string) => chanceBy(corners, (Date.parse(day) - Date.parse(today)) / 86_400_000);
        expect(at(unit.earliest)).toBeGreaterThanOrEqual(0.1);
        expect(at(unit.likely)).toBeGreaterThanOrEqual(0.5);
        if (unit.earliest < unit.likely) expect(at(unit.earliest)).toBeCloseTo(0.1, 9);
        if (unit.latest !== null && unit.likely < unit.latest) {
          expect(at(unit.likely)).toBeCloseTo(0.5, 9);
          expect(at(unit.latest)).toBeCloseTo(0.9, 9);
        }
      }),
    );
  });

  it('refuse what makes no sense', () => {
    const ask = { today, months: 1 };
    expect(() => expectedArrivals([{ ...onDay(today), earliest: '2026-05-01' }], ask)).toThrow('earliest, likely');
    expect(() => expectedArrivals([], { today, months: 0 })).toThrow('Months');
    expect(() => expectedArrivals([{ ...onDay(today), comes: 1.1 }], ask)).toThrow('Odds');
  });
});

describe('how many of some events happen', () => {
  it('is the binomial band where all are alike', () => {
    for (const [count, chance] of [
      [12, 0.3],
      [40, 0.05],
      [150, 0.5],
      [700, 0.9],
      [5_000, 0.0004],
    ] as const) {
      const { low, high } = countBand(Array.from({ length: count }, () => chance));
      const by = (number: number) => (number < 0 ? 0 : jstat.jStat.binomial.cdf(number, count, chance));
      expect(by(low - 1)).toBeLessThanOrEqual(0.1);
      expect(by(low)).toBeGreaterThan(0.1);
      expect(1 - by(high)).toBeLessThanOrEqual(0.1);
      expect(1 - by(high - 1)).toBeGreaterThan(0.1);
    }
  });

  it('is as good as normal when there are many, within one', () => {
    for (const [count, chance] of [
      [2_001, 0.06],
      [5_000, 0.5],
      [900, 0.8],
    ] as const) {
      const { low, high } = countBand(Array.from({ length: count }, () => chance));
      const by = (number: number) => jstat.jStat.binomial.cdf(number, count, chance);
      expect(by(low - 2)).toBeLessThanOrEqual(0.1);
      expect(by(low + 1)).toBeGreaterThan(0.1);
      expect(1 - by(high + 1)).toBeLessThanOrEqual(0.1);
      expect(1 - by(high - 2)).toBeGreaterThan(0.1);
    }
  });

  it('counts what is sure without doubt, and nothing where there is nothing', () => {
    expect(countBand([1, 1, 0])).toEqual({ low: 2, high: 2 });
    expect(countBand([])).toEqual({ low: 0, high: 0 });
  });
});

it('a month has its days', () => {
  expect(daysOfMonth('2028-02')).toEqual(['2028-02-01', '2028-02-29']);
});
