import { describe, expect, it } from '@jest/globals';
import { expiryOnReceipt } from './shelf-life.ts';

const seal = { number: 'TS-20', shelfLifeMonths: 60 };

describe('shelf life on receipt', () => {
  it.each([
    ['cured today', '2026-05-05', '2031-05-06'],
    ['cured in the quarter that runs', '2Q26', '2031-07-01'],
    ['cured years ago', '2021-06-01', '2026-06-02'],
  ])('%s', (_, cureDate, expires) => {
    expect(expiryOnReceipt(seal, cureDate, '2026-05-05')).toBe(expires);
  });

  it.each([
    ['cured tomorrow', '2026-05-06', 'cure-date-wrong'],
    ['cured in a quarter to come', '3Q26', 'cure-date-wrong'],
    ['no cure date', undefined, 'cure-date-wrong'],
    ['too old', '2021-05-01', 'lot-expired'],
  ])('refuses what was %s', (_, cureDate, type) => {
    expect(() => expiryOnReceipt(seal, cureDate, '2026-05-05')).toThrow(expect.objectContaining({ type }));
  });

  it('asks no cure date of a part that does not age', () => {
    expect(expiryOnReceipt({ number: 'TW-10', shelfLifeMonths: null }, undefined, '2026-05-05')).toBeUndefined();
  });
});
