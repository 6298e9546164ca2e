import { describe, expect, it } from '@jest/globals';
import { Temporal } from '@js-temporal/polyfill';
import { nextDue } from '../../packages/rules/src/due/index.ts';

const calendarDue = (date: string, months: number, endOfMonth = false) =>
  nextDue({ lastOverhaul: { date, hours: 'unknown' }, limits: [{ months, endOfMonth }], readings: [], asOf: date })
    .dueDate;

describe('calendar limits', () => {
  // 14 CFR 91.409(a) and the FAA's published reading of "calendar months": to the last day of the Nth month after.
  // Examples recomputed by hand; a limit in a maker's manual counts to the day (common practice, no source).
  it.each([
    ['2025-06-06', 12, '2026-06-30'],
    ['2025-06-01', 12, '2026-06-30'],
    ['2025-06-30', 12, '2026-06-30'],
    ['2020-07-22', 24, '2022-07-31'],
    ['2024-01-31', 1, '2024-02-29'],
    ['2026-02-10', 24, '2028-02-29'],
  ])('%s + %i calendar months is good through %s', (date, months, good) => {
    expect(calendarDue(date, months, true)).toBe(good);
  });

  it.each([
    ['2025-06-06', 12, '2026-06-06'],
    ['2020-02-29', 72, '2026-02-28'],
    ['2020-08-31', 60, '2025-08-31'],
    ['2020-08-31', 6, '2021-02-28'],
    ['2024-02-29', 48, '2028-02-29'],
  ])('%s + %i months to the day is %s', (date, months, good) => {
    expect(calendarDue(date, months)).toBe(good);
  });

  // Oracle: TC39 Temporal (its polyfill), PlainDate.add with overflow "constrain", at every month end of forty years.
  it('agrees with an independent calendar at every month end over forty years', () => {
    let checked = 0;
    for (let at = Temporal.PlainYearMonth.from('1990-01'); at.year < 2030; at = at.add({ months: 1 })) {
      const end = at.toPlainDate({ day: at.daysInMonth });
      for (const months of [1, 3, 6, 11, 12, 13, 24, 36, 60, 72, 84, 120]) {
        const then = end.add({ months }, { overflow: 'constrain' });
        expect(calendarDue(end.toString(), months)).toBe(then.toString());
        expect(calendarDue(end.toString(), months, true)).toBe(then.with({ day: then.daysInMonth }).toString());
        checked += 1;
      }
    }
    expect(checked).toBe(480 * 12);
  });
});

describe('whichever first', () => {
  // Common practice, no source; figures derived by hand: 1089.6 h left at 1.5 h a day is 726.4 days, rounded down.
  const next = (perDay: number) =>
    nextDue({
      lastOverhaul: { date: '2024-02-29', hours: 0 },
      limits: [{ hours: 2400 }, { months: 48 }],
      readings: [
        { date: '2025-03-02', hours: 1310.4 - 365 * perDay },
        { date: '2026-03-02', hours: 1310.4 },
      ],
      asOf: '2026-03-02',
    });

  it('is by hours at 1.5 h a day, by calendar at 0.5', () => {
    expect(next(1.5)).toMatchObject({ dueDate: '2028-02-26', governedBy: 'hours', hoursLeft: 1089.6 });
    expect(next(0.5)).toMatchObject({ dueDate: '2028-02-29', governedBy: 'calendar' });
  });

  // Derived: overhauled at 1234.5 on the meter, now 1630.2: 395.7 h flown, of 2000.
  it('counts hours since overhaul in tenths', () => {
    const lastOverhaul = { date: '2025-01-01', hours: 1234.5 };
    const readings = [{ date: '2026-01-01', hours: 1630.2 }];
    const { hoursLeft } = nextDue({ lastOverhaul, limits: [{ hours: 2000 }], readings, asOf: '2026-01-01' });
    expect(hoursLeft).toBe(1604.3);
  });
});

describe('the band of likely dates', () => {
  // Student's t with three degrees of freedom, 90 % one-sided: 1.638 (NIST/SEMATECH e-Handbook 1.3.6.7.2, table of critical values). A supposed
  // use scatters by half a month's hours and counts like three readings, so a month is 30 ± 15 h and a day adds 7.5 h²: each end of the
  // band lies where the hours still missing, or flown too many, are t standard deviations.
  it('leaves one chance in ten on either side by the table of Student’s t', () => {
    const [hours, asOf] = [30_000, '2026-03-02'];
    const due = nextDue({
      ...{ lastOverhaul: { date: asOf, hours: 0 }, limits: [{ hours }], readings: [{ date: asOf, hours: 0 }], asOf },
      use: { perDay: 1 },
    });
    const days = (date: string) => Temporal.PlainDate.from(asOf).until(date, { largestUnit: 'days' }).days;
    const t = (date: string) => Math.abs(hours - days(date)) / Math.sqrt(7.5 * days(date));
    expect(days(due.dueDate)).toBe(hours);
    expect(Math.abs(t(due.earliest) - 1.638)).toBeLessThan(0.004);
    expect(Math.abs(t(due.latest) - 1.638)).toBeLessThan(0.004);
  });
});
