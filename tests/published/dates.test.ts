import { addMonths, cureExpiry, daysBetween } from '@hubwright/rules/dates';
import { describe, expect, test } from '@jest/globals';

describe('months, the end of the month clamped', () => {
  // PostgreSQL documentation, "Date/Time Functions and Operators" (adding months clamps: Jan 31 + 1 month → Feb 28/29); from memory.
  // Rows derived two ways: own civil-calendar arithmetic and Date.UTC.
  test.each([
    ['2023-01-31', 1, '2023-02-28'],
    ['2024-01-31', 1, '2024-02-29'],
    ['2024-01-30', 1, '2024-02-29'],
    ['2024-02-29', 12, '2025-02-28'],
    ['2024-02-29', 48, '2028-02-29'],
    ['2024-02-29', -12, '2023-02-28'],
    ['2023-02-28', 12, '2024-02-28'],
    ['2024-03-31', -1, '2024-02-29'],
    ['2023-05-31', 1, '2023-06-30'],
    ['2023-08-31', 6, '2024-02-29'],
    ['2023-12-31', 1, '2024-01-31'],
    ['2000-02-29', 1200, '2100-02-28'],
    ['2096-02-29', 48, '2100-02-28'],
    ['2024-12-31', -10, '2024-02-29'],
    ['2025-01-31', 0, '2025-01-31'],
    ['2025-07-31', -29, '2023-02-28'],
    ['2024-01-31', 13, '2025-02-28'],
  ])('%s and %i months → %s', (start, months, end) => {
    expect(addMonths(start, months)).toBe(end);
  });

  test('adding step by step loses the day', () => {
    expect(addMonths(addMonths('2024-01-31', 1), 1)).toBe('2024-03-29');
    expect(addMonths('2024-01-31', 2)).toBe('2024-03-31');
  });
});

// Gregorian calendar, leap-year rule of ISO 8601-1; day numbers from Unix time (IEEE Std 1003.1, "Seconds Since the Epoch").
test.each([
  ['1970-01-01', '2000-02-29', 11016],
  ['1970-01-01', '2024-02-29', 19782],
  ['1970-01-01', '2038-01-19', 24855],
  ['2000-01-01', '2100-01-01', 36525],
  ['2020-02-29', '2024-02-29', 1461],
])('from %s to %s are %i days', (from, to, days) => {
  expect(daysBetween(from, to)).toBe(days);
});

// SAE ARP5316 as described on several seal-trade pages (copies, not the standard itself): the last day of the cure quarter counts
// as the date of manufacture, life runs from it. The dates are the first day the part may not be used. Derived by hand.
test.each([
  ['4Q20', { years: 15 }, '2036-01-01'],
  ['1Q24', { years: 15 }, '2039-04-01'],
  ['2Q25', { years: 15 }, '2040-07-01'],
  ['3Q19', { years: 5 }, '2024-10-01'],
  ['4Q20', { years: 3 }, '2024-01-01'],
  ['4Q20', { quarters: 60 }, '2036-01-01'],
])('a seal cured %s with %j may not be used from %s', (cured, life, expires) => {
  expect(cureExpiry(cured, life)).toBe(expires);
});
