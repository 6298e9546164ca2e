import { describe, expect, it } from '@jest/globals';
import { addDays } from '../dates/index.ts';
import { type NextDueInput, nextDue } from './index.ts';

const asOf = '2026-03-02';
/** Readings every `step` days up to asOf at a steady rate, the last one showing `hours`. */
const steady = (hours: number, perDay: number, { count = 7, step = 50 } = {}) =>
  Array.from({ length: count }, (_, i) => {
    const ago = (count - 1 - i) * step;
    return { date: addDays(asOf, -ago), hours: Math.round((hours - perDay * ago) * 10) / 10 };
  });
const base: NextDueInput = {
  lastOverhaul: { date: '2024-02-29', hours: 1000 },
  limits: [{ hours: 2400, months: 48 }],
  readings: steady(2310.4, 1.5),
  asOf,
};
const due = (change: Partial<NextDueInput> = {}) => nextDue({ ...base, ...change });

describe('whichever comes first', () => {
  it('finds the hour limit two days before the calendar (the worked example)', () => {
    const next = due();
    expect(next).toMatchObject({ dueDate: '2028-02-26', governedBy: 'hours', dueHours: 3400, hoursLeft: 1089.6 });
    expect(next).toMatchObject({ daysLeft: 726, overdue: false, latest: '2028-02-29' });
    expect(next.basis).toContain('1.50 h a day (7 readings');
  });

  it('lets the calendar govern where there is less flying', () => {
    expect(due({ readings: steady(2310.4, 0.5) })).toMatchObject({ dueDate: '2028-02-29', governedBy: 'calendar' });
  });

  it('takes the first of several limits and leaves a missing side unlimited', () => {
    const tighter = [{ hours: 2400 }, { months: 72 }, { hours: 2000 }, { months: 60 }];
    expect(due({ limits: tighter })).toMatchObject({ dueHours: 3000, governedBy: 'hours' });
    expect(due({ limits: [{ months: 48 }] })).toMatchObject({ dueHours: 'unknown', hoursLeft: 'unknown' });
    const byHoursAlone = due({ limits: [{ hours: 9000 }] });
    expect(byHoursAlone).toMatchObject({ governedBy: 'hours', dueHours: 10_000 });
  });

  it('counts calendar months to the day or to the end of the month, as the document says', () => {
    const lastOverhaul = { date: '2025-06-06', hours: 'unknown' } as const;
    expect(due({ lastOverhaul, limits: [{ months: 12 }] }).dueDate).toBe('2026-06-06');
    expect(due({ lastOverhaul, limits: [{ months: 12, endOfMonth: true }] }).dueDate).toBe('2026-06-30');
  });
});

describe('at and past the limit', () => {
  it('is due, not overdue, at exactly the hours or on exactly the day', () => {
    expect(due({ readings: steady(3400, 1.5) })).toMatchObject({
      overdue: false,
      hoursLeft: 0,
      daysLeft: 0,
      dueDate: asOf,
    });
    const onTheDay = due({ limits: [{ months: 24 }], lastOverhaul: { date: '2024-03-02', hours: 1000 } });
    expect(onTheDay).toMatchObject({ overdue: false, daysLeft: 0, dueDate: asOf });
  });

  it('is overdue a tenth or a day later, and names the day it fell due', () => {
    const byHours = due({ readings: steady(3415, 1.5) });
    expect(byHours).toMatchObject({ overdue: true, hoursLeft: -15, dueDate: addDays(asOf, -10), daysLeft: -10 });
    expect(due({ readings: steady(3400.1, 1.5) })).toMatchObject({ overdue: true, hoursLeft: -0.1 });
    const byDate = due({ limits: [{ months: 24 }], lastOverhaul: { date: '2024-03-01', hours: 1000 } });
    expect(byDate).toMatchObject({ overdue: true, dueDate: '2026-03-01', daysLeft: -1, governedBy: 'calendar' });
  });

  it('does not call it overdue on an old reading alone, but says the limit is likely reached', () => {
    const readings = steady(3390, 1.5).map((reading) => ({ ...reading, date: addDays(reading.date, -60) }));
    const next = due({ readings });
    expect(next).toMatchObject({ overdue: false, hoursLeft: 10, dueDate: addDays(asOf, -54) });
    expect(next.basis).toContain('ask for a reading');
  });
});

describe('when the hours cannot be dated', () => {
  it.each([
    ['The hours at installation are unknown', { lastOverhaul: { date: '2024-02-29', hours: 'unknown' as const } }],
    ['there is no meter reading', { readings: [] }],
    ['one meter reading only', { readings: steady(2310, 1, { count: 1 }) }],
    [
      'older than 12 months',
      {
        readings: steady(2310, 1).map((r) => ({ ...r, date: addDays(r.date, -400) })),
      },
    ],
    [
      'parked: the meter stands since 2025-09-01',
      {
        readings: [
          { date: '2025-01-01', hours: 1100 },
          { date: '2025-09-01', hours: 1200 },
          { date: asOf, hours: 1200 },
        ],
      },
    ],
    ['the meter has not moved', { readings: steady(1000, 0, { count: 2, step: 30 }) }],
  ])('gives the calendar date and says why: %s', (why, change) => {
    const next = due(change);
    expect(next).toMatchObject({ dueDate: '2028-02-29', earliest: '2028-02-29', latest: '2028-02-29' });
    expect(next).toMatchObject({ governedBy: 'calendar', overdue: false });
    expect(next.basis).toContain(why);
  });

  it('has no date at all without a calendar limit, and does not count unknown as nought', () => {
    const next = due({ lastOverhaul: { date: '2024-02-29', hours: 'unknown' }, limits: [{ hours: 100 }] });
    expect(next).toMatchObject({ dueDate: 'unknown', earliest: 'unknown', latest: 'unknown', governedBy: 'none' });
    expect(next).toMatchObject({ dueHours: 'unknown', hoursLeft: 'unknown', daysLeft: 'unknown', overdue: false });
  });

  it('knows all hours are left on the day of installation and none for sure later', () => {
    const fresh = { lastOverhaul: { date: asOf, hours: 2310.4 }, readings: steady(2000, 1).slice(0, 6) };
    expect(due(fresh)).toMatchObject({ hoursLeft: 2400 });
    expect(due({ lastOverhaul: { date: '2025-03-01', hours: 1000 }, readings: [] })).toMatchObject({
      hoursLeft: 'unknown',
    });
  });
});

describe('the aircraft’s use', () => {
  it('weighs this year’s flying more the newer it is', () => {
    const slower = [
      { date: '2025-03-02', hours: 1200 },
      { date: '2025-09-02', hours: 1600 },
      { date: asOf, hours: 1700 },
    ];
    const faster = [
      { date: '2025-03-02', hours: 1200 },
      { date: '2025-09-02', hours: 1300 },
      { date: asOf, hours: 1700 },
    ];
    const limits = [{ hours: 2400 }];
    expect(due({ readings: slower, limits }).daysLeft).toBeGreaterThan(
      due({ readings: faster, limits }).daysLeft as number,
    );
  });

  it('forgets flying before the last twelve months', () => {
    const year = steady(2310.4, 1.5, { count: 9 });
    const limits = [{ hours: 2400 }];
    const busy = due({ readings: [{ date: '2024-03-01', hours: 1000 }, ...year], limits });
    const idle = due({ readings: [{ date: '2024-03-01', hours: 1710 }, ...year], limits });
    expect(busy.dueDate).toBe(idle.dueDate);
    expect(busy.latest).toBe(idle.latest);
  });

  it('counts a parked winter in and says so', () => {
    const readings = [
      { date: '2025-03-02', hours: 1500 },
      { date: '2025-10-01', hours: 1700 },
      { date: '2026-01-01', hours: 1700 },
      { date: asOf, hours: 1760 },
    ];
    expect(due({ readings }).basis).toContain('92 parked days counted in');
  });

  it('leaves out readings after asOf and says so', () => {
    const later = [...base.readings, { date: '2026-05-01', hours: 3000 }];
    expect(due({ readings: later })).toMatchObject({ dueDate: due().dueDate, hoursLeft: 1089.6 });
    expect(due({ readings: later }).basis).toContain('One later reading is left out.');
  });

  it('uses the day of installation as a reading where it is known', () => {
    const lastOverhaul = { date: '2025-10-01', hours: 1000, installed: '2025-11-22' };
    const readings = [
      { date: '2025-10-20', hours: 990 },
      { date: asOf, hours: 1100 },
    ];
    expect(due({ lastOverhaul, readings, limits: [{ hours: 300 }] })).toMatchObject({
      hoursLeft: 200,
      governedBy: 'hours',
    });
  });
});

describe('bad input', () => {
  const [first, second] = [base.readings[0]!, base.readings[1]!];
  it.each([
    ['no-limit', 'limits', { limits: [] }],
    ['empty-limit', 'limits[1]', { limits: [{ hours: 100 }, { endOfMonth: true }] }],
    ['not-a-limit', 'limits[0].hours', { limits: [{ hours: 0 }] }],
    ['not-a-limit', 'limits[0].months', { limits: [{ months: 1.5 }] }],
    ['out-of-order', 'readings[1].date', { readings: [second, first] }],
    ['meter-runs-backwards', 'readings[1].hours', { readings: [first, { ...second, hours: first.hours - 0.1 }] }],
    ['meter-runs-backwards', 'readings[0].hours', { readings: [{ date: asOf, hours: 12 }] }],
    ['meter-runs-backwards', 'readings[0].hours', { readings: [{ date: '2024-02-01', hours: 1000.1 }] }],
    ['not-hours', 'readings[0].hours', { readings: [{ date: asOf, hours: Number.NaN }] }],
    ['not-hours', 'lastOverhaul.hours', { lastOverhaul: { date: '2024-02-29', hours: -1 } }],
    ['not-a-date', 'readings[0].date', { readings: [{ date: '2026-02-29', hours: 2000 }] }],
    ['not-a-date', 'asOf', { asOf: 'today' }],
    ['before-overhaul', 'asOf', { asOf: '2024-02-28' }],
    ['not-between', 'lastOverhaul.installed', { lastOverhaul: { ...base.lastOverhaul, installed: '2024-01-01' } }],
  ])('refuses %s at %s', (code, path, change) => {
    expect(() => due(change)).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });

  it('counts hours it had already when it was installed on this aircraft', () => {
    // By hand: 2400 − 900 = 1500 h left on 2026-01-01, at 600.0 on this meter: due at 2100.0.
    const due = nextDue({
      lastOverhaul: { date: '2024-01-01', hours: 600, installed: '2026-01-01', flownBefore: 900 },
      limits: [{ hours: 2400 }],
      readings: [{ date: '2026-06-01', hours: 700 }],
      asOf: '2026-06-10',
    });
    expect(due).toMatchObject({ dueHours: 2100, hoursLeft: 1400, overdue: false, governedBy: 'hours' });
  });

  it('that had run out before it was installed is overdue from that day', () => {
    const due = nextDue({
      lastOverhaul: { date: '2024-01-01', hours: 600, installed: '2026-01-01', flownBefore: 2500 },
      limits: [{ hours: 2400 }],
      readings: [{ date: '2026-06-01', hours: 700 }],
      asOf: '2026-06-10',
    });
    expect(due).toMatchObject({ dueDate: '2026-01-01', hoursLeft: -200, overdue: true });
  });

  it('takes a supposed use in place of the readings, from the last figure on', () => {
    const given = {
      lastOverhaul: { date: '2026-01-01', hours: 100 },
      limits: [{ hours: 1000 }],
      readings: [{ date: '2026-06-01', hours: 200 }],
      asOf: '2026-06-10',
    };
    expect(nextDue(given).dueDate).toBe('unknown');
    // By hand: 900 h left at 2 h a day are 450 days from 2026-06-01.
    const supposed = nextDue({ ...given, use: { perDay: 2 } });
    expect(supposed).toMatchObject({
      dueDate: '2027-08-25',
      perDay: 2,
      basis: expect.stringContaining('Supposed: 2.00 h a day'),
    });
    expect(supposed.earliest < '2027-08-25' && supposed.latest > '2027-08-25').toBe(true);
    expect(() => nextDue({ ...given, use: { perDay: 25 } })).toThrow(/24 hours/);
  });

  it('takes the reason given where hours stand still', () => {
    const due = nextDue({
      lastOverhaul: { date: '2024-01-01', hours: 900, installed: '2026-05-01', flownBefore: 900 },
      limits: [{ hours: 2400, months: 72 }],
      readings: [{ date: '2026-05-01', hours: 900 }],
      asOf: '2026-06-10',
      use: { why: 'it lies in storage' },
    });
    expect(due).toMatchObject({ dueDate: '2030-01-01', hoursLeft: 1500, governedBy: 'calendar' });
    expect(due.basis).toContain('The hour limit at 2400 h cannot be dated: it lies in storage.');
  });
});
