import { describe, expect, test } from '@jest/globals';
import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import { addDays, addMonths, compareDates, cureExpiry, daysBetween, endOfMonth, isDate } from './index.ts';

// The oracle is the Temporal polyfill, another program than the calendar library the rules use.
const plain = (date: string) => Temporal.PlainDate.from(date);
const dates = fc.integer({ min: -300_000, max: 300_000 }).map((days) => plain('2000-01-01').add({ days }).toString());

describe('the worked examples', () => {
  test('a day that exists', () => {
    expect([isDate('2024-02-29'), isDate('2023-02-29')]).toEqual([true, false]);
  });
  test('comparing, adding, counting', () => {
    expect(compareDates('2024-01-31', '2024-02-01')).toBeLessThan(0);
    expect(addDays('2024-02-28', 2)).toBe('2024-03-01');
    expect(daysBetween('2024-02-28', '2024-03-01')).toBe(2);
    expect(addMonths('2023-08-31', 6)).toBe('2024-02-29');
    expect(endOfMonth('2024-02-10')).toBe('2024-02-29');
  });
  test('three years after cure', () => {
    expect(cureExpiry('4Q20', { years: 3 })).toBe('2024-01-01');
    expect(cureExpiry('2020-11-05', { years: 3 })).toBe('2023-11-06');
  });
});

describe('against an independent calendar', () => {
  test('months are added and clamped as there', () => {
    fc.assert(
      fc.property(dates, fc.integer({ min: -1500, max: 1500 }), (date, months) => {
        expect(addMonths(date, months)).toBe(plain(date).add({ months }).toString());
      }),
    );
  });
  test('days are added and counted as there', () => {
    fc.assert(
      fc.property(dates, dates, fc.integer({ min: -9999, max: 9999 }), (a, b, days) => {
        expect(addDays(a, days)).toBe(plain(a).add({ days }).toString());
        expect(daysBetween(a, b)).toBe(plain(a).until(plain(b), { largestUnit: 'days' }).days);
        expect(Math.sign(compareDates(a, b))).toBe(Temporal.PlainDate.compare(plain(a), plain(b)));
        expect(addDays(a, daysBetween(a, b))).toBe(b);
        expect(endOfMonth(a)).toBe(plain(a).with({ day: 31 }).toString());
      }),
    );
  });
  test('a cure day expires the day after its life', () => {
    fc.assert(
      fc.property(dates, fc.nat({ max: 20 }), fc.nat({ max: 80 }), (date, years, quarters) => {
        const months = years * 12 + quarters * 3 + 1;
        const expected = plain(date).add({ months }).add({ days: 1 }).toString();
        expect(cureExpiry(date, { years, quarters, months: 1 })).toBe(expected);
      }),
    );
  });
});

describe('cure dates', () => {
  test.each(['4Q20', '4q20', ' 4Q20 ', '4Q2020', '2020Q4', 'Q4 2020', '2020-12-31'])(
    '%s is the last quarter of 2020',
    (cured) => {
      expect(cureExpiry(cured, { years: 15 })).toBe('2036-01-01');
    },
  );
  test('two-digit years turn at 80', () => {
    expect(cureExpiry('1Q80', { quarters: 1 })).toBe('1980-07-01');
    expect(cureExpiry('1Q99', { months: 12 })).toBe('2000-04-01');
    expect(cureExpiry('1Q79', { years: 1 })).toBe('2080-04-01');
  });
  test('units of life add up', () => {
    const whole = cureExpiry('4Q20', { years: 2 });
    expect(cureExpiry('4Q20', { years: 1, quarters: 3, months: 3 })).toBe(whole);
    expect(cureExpiry('4Q20', { quarters: 8 })).toBe(whole);
  });
  test('a leap day of cure: the last good day is clamped', () => {
    expect(cureExpiry('2024-02-29', { years: 1 })).toBe('2025-03-01');
  });
  test.each(['0Q20', '5Q20', '4Q2', '4Q020', 'Q420', '2020-4', '', '4Q0000', '2020-02-30', '2020Q5'])(
    '%j is refused',
    (cured) => {
      expect(() => cureExpiry(cured, { years: 1 })).toThrow(
        expect.objectContaining({ code: 'not-a-cure-date', path: 'cureDate' }),
      );
    },
  );
  test.each([
    [{}, 'life'],
    [{ years: 0 }, 'life'],
    [{ years: -1 }, 'life.years'],
    [{ quarters: 1.5 }, 'life.quarters'],
    [{ months: Number.NaN }, 'life.months'],
  ])('the life %j is refused, never read as unlimited', (life, path) => {
    expect(() => cureExpiry('4Q20', life)).toThrow(expect.objectContaining({ code: 'no-life', path }));
  });
});

describe('what is refused', () => {
  test.each([
    '2023-02-29',
    '2023-13-01',
    '2023-00-10',
    '0000-01-01',
    '23-01-01',
    '2023-1-1',
    '2023-01-01T00:00',
    ' 2023-01-01',
    '',
  ])('%j is no date', (text) => {
    expect(isDate(text)).toBe(false);
    expect(() => addDays(text, 1)).toThrow(expect.objectContaining({ name: 'RuleError', code: 'not-a-date' }));
  });
  test('other types are no dates', () => {
    expect([null, undefined, 20240101, new Date()].map(isDate)).toEqual([false, false, false, false]);
    expect(() => compareDates('2024-01-01', null as unknown as string)).toThrow(expect.objectContaining({ path: 'b' }));
  });
  test.each([1.5, Number.NaN, Number.POSITIVE_INFINITY])('%p months are refused', (months) => {
    expect(() => addMonths('2024-01-01', months)).toThrow(
      expect.objectContaining({ code: 'not-whole', path: 'months' }),
    );
  });
  test('the calendar ends are an error, not a clamp', () => {
    expect(addDays('9999-12-30', 1)).toBe('9999-12-31');
    for (const beyond of [
      () => addDays('9999-12-31', 1),
      () => addMonths('9999-12-01', 1),
      () => addDays('0001-01-01', -1),
      () => addMonths('0001-01-31', -1),
      () => addMonths('2024-01-31', 9_007_199_254_740_991),
      () => addDays('2024-01-31', -9_007_199_254_740_991),
    ])
      expect(beyond).toThrow(expect.objectContaining({ code: 'date-out-of-range' }));
  });
});
