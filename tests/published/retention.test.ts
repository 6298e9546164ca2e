import { mayPurge, purgeableFrom } from '@hubwright/rules/retention';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';

const faa = { approval: 'a two-year rule', years: 2 };
const easa = { approval: 'a three-year rule', years: 3 };

describe('how long records are kept', () => {
  // 14 CFR 145.219(c): "at least 2 years from the date the article was approved for return to service". Two calendar years
  // from 29 February end on 28 February: month arithmetic of SQL intervals (ISO 9075), the last day kept whole.
  it('counts calendar years from the approval, a leap day included', () => {
    expect(purgeableFrom('2024-02-29', [faa])).toBe('2026-03-01');
    expect(mayPurge('2024-02-29', [faa], '2026-02-28')).toBe(false);
    expect(mayPurge('2024-02-29', [faa], '2026-03-01')).toBe(true);
  });

  // Regulation (EU) 1321/2014 annex II, 145.A.55: three years from the date of the certificate of release.
  it('goes by the longest of the shop’s approvals', () => {
    expect(purgeableFrom('2024-05-10', [faa, easa])).toBe('2027-05-11');
    expect(mayPurge('2024-05-10', [easa, faa], '2027-05-10')).toBe(false);
  });

  it('refuses a shop without a rule and rules shorter than the shortest there is', () => {
    expect(() => purgeableFrom('2024-05-10', [])).toThrow('for no approval');
    expect(() => purgeableFrom('2024-05-10', [{ approval: 'x', years: 1 }])).toThrow('two years or more');
    expect(() => purgeableFrom('2024-05-10', [{ approval: 'x', years: 2.5 }])).toThrow('two years or more');
    expect(() => purgeableFrom('soon', [faa])).toThrow('no date');
  });

  it('never lets one more rule shorten it', () => {
    const day = fc.date({ min: new Date('2000-01-01'), max: new Date('2080-01-01'), noInvalidDate: true });
    const years = fc.integer({ min: 2, max: 100 });
    fc.assert(
      fc.property(day, years, years, (date, a, b) => {
        const on = date.toISOString().slice(0, 10);
        const both = purgeableFrom(on, [
          { approval: 'a', years: a },
          { approval: 'b', years: b },
        ]);
        expect(both >= purgeableFrom(on, [{ approval: 'a', years: a }])).toBe(true);
      }),
    );
  });
});
