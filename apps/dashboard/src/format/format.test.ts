import { describe, expect, it } from '@jest/globals';
import { ageWords, dateIn, daysBetween, dueWords, formatDate, formatInstant } from './dates.ts';
import { formatMoney, moneyText, parseMoney } from './money.ts';
import { countOf, formatHours, parseHours } from './numbers.ts';

describe('money', () => {
  it('keeps every digit between the smallest unit and the text, with as many decimals as ISO 4217 gives the currency', () => {
    // ISO 4217 table A.1, column "minor unit": USD 2, JPY 0, KWD 3.
    expect(moneyText({ currency: 'USD', minor: 123456 })).toBe('1234.56');
    expect(moneyText({ currency: 'USD', minor: 5 })).toBe('0.05');
    expect(moneyText({ currency: 'USD', minor: -5 })).toBe('-0.05');
    expect(moneyText({ currency: 'JPY', minor: 5000 })).toBe('5000');
    expect(moneyText({ currency: 'KWD', minor: 1 })).toBe('0.001');
    expect(moneyText({ currency: 'USD', minor: Number.MAX_SAFE_INTEGER })).toBe('90071992547409.91');
  });

  it('shows the largest exact amount without losing a digit', () => {
    expect(formatMoney({ currency: 'USD', minor: Number.MAX_SAFE_INTEGER })).toBe('$90,071,992,547,409.91');
    expect(formatMoney({ currency: 'USD', minor: -123456 })).toBe('-$1,234.56');
  });

  it('reads typed amounts exactly and refuses more decimals than the currency has', () => {
    expect(parseMoney('1,234.5', 'USD')).toBe(123450);
    // 0.29 * 100 is 28.999… in binary floating point
    expect(parseMoney('0.29', 'USD')).toBe(29);
    expect(parseMoney('12', 'JPY')).toBe(12);
    expect(parseMoney('12.5', 'JPY')).toBeUndefined();
    expect(parseMoney('1.005', 'USD')).toBeUndefined();
    expect(parseMoney('', 'USD')).toBeUndefined();
    expect(parseMoney('twelve', 'USD')).toBeUndefined();
    expect(Object.is(parseMoney('-0', 'USD'), 0)).toBe(true);
  });
});

describe('hours in tenths', () => {
  it('shows unknown as a word, never as zero', () => {
    expect(formatHours('unknown')).toBe('unknown');
    expect(formatHours(0)).toBe('0.0');
    expect(formatHours(12345)).toBe('1,234.5');
  });

  it('reads at most one decimal or the word unknown', () => {
    expect(parseHours('1234.5')).toBe(12345);
    expect(parseHours(' Unknown ')).toBe('unknown');
    expect(parseHours('12.34')).toBeUndefined();
    expect(parseHours('')).toBeUndefined();
  });
});

describe('dates', () => {
  it('takes the calendar day from the shop’s zone, not from the device', () => {
    const lateEvening = new Date('2026-11-26T03:30:00Z');
    expect(dateIn('America/Chicago', lateEvening)).toBe('2026-11-25');
    expect(dateIn('Pacific/Auckland', lateEvening)).toBe('2026-11-26');
    expect(formatInstant('2026-11-26T03:30:00Z', 'America/Chicago')).toBe('25 Nov 2026, 21:30');
  });

  it('never moves a calendar date and counts days across the clock change', () => {
    expect(formatDate('2026-12-14')).toBe('14 Dec 2026');
    expect(daysBetween('2026-03-07', '2026-03-09')).toBe(2);
    expect(daysBetween('2026-12-31', '2027-01-01')).toBe(1);
  });

  it('calls the due date itself today, since it is the last good day', () => {
    expect(dueWords('2026-11-25', '2026-11-25')).toBe('today');
    expect(dueWords('2026-11-26', '2026-11-25')).toBe('tomorrow');
    expect(dueWords('2026-11-24', '2026-11-25')).toBe('1 day late');
    expect(dueWords('2026-11-15', '2026-11-25')).toBe('10 days late');
  });

  it('says an age in the largest unit that tells enough', () => {
    const now = new Date('2026-11-25T12:00:00Z');
    expect(ageWords('2026-11-25T11:59:40Z', now)).toBe('under a minute');
    expect(ageWords('2026-11-25T11:48:00Z', now)).toBe('12 min');
    expect(ageWords('2026-11-24T00:00:00Z', now)).toBe('36 h');
    expect(ageWords('2026-11-20T00:00:00Z', now)).toBe('5 days');
  });
});

it('counts one line and several lines', () => {
  expect(countOf(1, 'line')).toBe('1 line');
  expect(countOf(1200, 'line')).toBe('1,200 lines');
  expect(countOf(2, 'person', 'people')).toBe('2 people');
});
