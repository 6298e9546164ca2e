import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../dates/index.ts';
import { type NextDueInput, nextDue } from './index.ts';

const asOf = '2026-03-02';
const fleet = fc
  .record({
    gaps: fc.array(fc.tuple(fc.integer({ min: 0, max: 150 }), fc.integer({ min: 0, max: 3000 })), { maxLength: 8 }),
    sinceLast: fc.integer({ min: 0, max: 500 }),
    hours: fc.oneof(fc.integer({ min: 0, max: 500 }), fc.constant('unknown' as const)),
    limits: fc.array(
      fc.oneof(
        fc.record({ hours: fc.integer({ min: 1, max: 3000 }) }),
        fc.record({ months: fc.integer({ min: 1, max: 72 }), endOfMonth: fc.boolean() }),
        fc.record({ hours: fc.integer({ min: 1, max: 3000 }), months: fc.integer({ min: 1, max: 72 }) }),
      ),
      { minLength: 1, maxLength: 3 },
    ),
  })
  .map(({ gaps, sinceLast, hours, limits }): NextDueInput => {
    let ago = gaps.reduce((sum, [days]) => sum + days, sinceLast);
    const lastOverhaul = { date: addDays(asOf, -ago), hours };
    let tenths = (hours === 'unknown' ? 700 : hours) * 10;
    const readings = gaps.map(([days, flown]) => {
      ago -= days;
      tenths += flown;
      return { date: addDays(asOf, -ago), hours: tenths / 10 };
    });
    return { lastOverhaul, limits, readings, asOf };
  });
const orLast = (date: string) => (date === 'unknown' ? '9999-12-31' : date);

describe('on any aircraft', () => {
  it('keeps earliest ≤ due ≤ latest, and overdue means a due date gone by', () => {
    fc.assert(
      fc.property(fleet, (input) => {
        const next = nextDue(input);
        expect(orLast(next.earliest) <= orLast(next.dueDate) && orLast(next.dueDate) <= orLast(next.latest)).toBe(true);
        if (next.overdue) expect(next.dueDate <= asOf).toBe(true);
        if (next.dueDate !== 'unknown') expect(next.daysLeft).toBe(daysBetween(asOf, next.dueDate));
        expect(next.governedBy === 'none').toBe(next.dueDate === 'unknown');
      }),
      { numRuns: 500 },
    );
  });

  it('never falls due later, nor stops being overdue, when a limit tightens', () => {
    const cut = fc.integer({ min: 1, max: 71 });
    fc.assert(
      fc.property(fleet, cut, cut, fc.nat(2), (input, fewerHours, fewerMonths, which) => {
        const tighter = input.limits.map((limit, i) =>
          i === which % input.limits.length
            ? {
                ...limit,
                ...('hours' in limit ? { hours: Math.max(1, limit.hours! - fewerHours * 20) } : {}),
                ...('months' in limit ? { months: Math.max(1, limit.months! - fewerMonths) } : {}),
              }
            : limit,
        );
        const [before, after] = [nextDue(input), nextDue({ ...input, limits: tighter })];
        for (const field of ['dueDate', 'earliest', 'latest'] as const) {
          expect(orLast(after[field]) <= orLast(before[field])).toBe(true);
        }
        expect(after.overdue || !before.overdue).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('does not move for a reading on the line between two others', () => {
    fc.assert(
      fc.property(fleet, fc.nat(7), fc.double({ min: 0.1, max: 0.9, noNaN: true }), (input, pick, where) => {
        const [a, b] = [input.readings[pick], input.readings[pick + 1]];
        fc.pre(a !== undefined && b !== undefined && daysBetween(a.date, b.date) > 1);
        // Of several readings on a day the last one stands for it, and the line runs there.
        fc.pre(input.readings[pick + 2]?.date !== b!.date);
        const days = Math.max(1, Math.floor(daysBetween(a.date, b.date) * where));
        const hours = a.hours + ((b.hours - a.hours) * days) / daysBetween(a.date, b.date);
        const more = [...input.readings.slice(0, pick + 1), { date: addDays(a.date, days), hours }];
        const next = nextDue({ ...input, readings: [...more, ...input.readings.slice(pick + 1)] });
        expect(next.dueDate).toBe(nextDue(input).dueDate);
      }),
      { numRuns: 300 },
    );
  });
});

describe('the band', () => {
  /** A month's hours as a gamma variate (mean 30, scatter 18) by summing exponentials, from a fixed stream. */
  const stream = (seed: number) => {
    let state = seed;
    const uniform = () => {
      state = (state + 0x9e3779b9) | 0;
      let mixed = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
      mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
      return (((mixed ^ (mixed >>> 16)) >>> 0) + 0.5) / 4_294_967_296;
    };
    return () => Math.round(-100 * Math.log(uniform() * uniform() * uniform())) / 10;
  };

  it('holds what it says on aircraft whose use it does not know: one in ten early, half by the date, one in ten late', () => {
    const counts = { early: 0, half: 0, late: 0 };
    const shops = 3000;
    for (let shop = 1; shop <= shops; shop += 1) {
      const month = stream(shop * 7919);
      let hours = 1000;
      const readings = [{ date: addDays(asOf, -360), hours }];
      for (let ago = 330; ago >= 0; ago -= 30) {
        hours = Math.round((hours + month()) * 10) / 10;
        readings.push({ date: addDays(asOf, -ago), hours });
      }
      const limit = 900;
      const lastOverhaul = { date: readings[0]!.date, hours: 1000 };
      const next = nextDue({ lastOverhaul, limits: [{ hours: limit }], readings, asOf });
      let day = 0;
      for (let flown = 0; hours < 1000 + limit; hours += flown, day += 30) {
        flown = month();
        if (hours + flown >= 1000 + limit) day += Math.floor((30 * (1000 + limit - hours)) / flown) - 30;
      }
      const happened = addDays(asOf, day);
      if (happened < next.earliest) counts.early += 1;
      if (happened <= next.dueDate) counts.half += 1;
      if (happened > orLast(next.latest)) counts.late += 1;
    }
    // Four in five within the band, ± 4 points (three standard errors are 2.2); skewed use makes early a little likelier.
    const within = 1 - (counts.early + counts.late) / shops;
    expect(within).toBeGreaterThan(0.76);
    expect(within).toBeLessThan(0.84);
    expect(counts.early / shops).toBeLessThan(0.15);
    expect(counts.late / shops).toBeLessThan(0.15);
    expect(counts.half / shops).toBeGreaterThan(0.45);
    expect(counts.half / shops).toBeLessThan(0.55);
  });
});
