import { describe, expect, it } from '@jest/globals';
import { limitsNow } from '../../packages/rules/src/blades/index.ts';
import { judge } from '../../packages/rules/src/limits/index.ts';
import { mostOf } from '../../packages/rules/src/record-words/index.ts';

/** What AC 43.13-1B chapter 8 section 4 says of metal blades, as far as it is a rule of computation. */
describe('AC 43.13-1B', () => {
  // 8-73: width and thickness are checked at each blade station, by limits of that station.
  it('has a limit for each station: what is good at one is not at another', () => {
    const station = (low: number) => judge(5.5, { low, decimals: 3, method: 'absolute' }).pass;
    expect([station(5.48), station(6.51)]).toEqual([true, false]);
  });

  // 8-74: a blade whose repair brings width or thickness below its limit is rejected; at the limit it is not below it.
  it('rejects below the limit, not at it', () => {
    const limit = { low: 4.305, decimals: 3, method: 'absolute' } as const;
    expect([judge(4.305, limit).pass, judge(4.3049, limit).pass]).toEqual([true, false]);
  });

  // 8-73b: shortening goes with the least diameter of the specification; limits go by the drawing's dimensions and the reduction.
  it('has no limits for a diameter that the manual does not name', () => {
    const table = {
      low: null,
      high: null,
      oversizes: [],
      byDiameter: [{ from: '82', to: '84', low: '4.3', high: null }],
    };
    expect(limitsNow(table, { diameter: '82', oversize: null }).low).toBe('4.3');
    expect(() => limitsNow(table, { diameter: '81.9', oversize: null })).toThrow(/no limits/);
  });

  // 14 CFR 43.2: only a unit taken apart, cleaned, inspected, repaired, put together and tested may be called overhauled.
  it('is no overhaul of a propeller that was only reconditioned', () => {
    expect(mostOf('fixed-pitch').word).not.toBe('overhauled');
    expect(mostOf('overhaul').word).toBe('overhauled');
  });
});
