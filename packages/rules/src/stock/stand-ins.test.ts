import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type StandIn, usableFor } from './index.ts';

const link = (part: string, use: string, more: Partial<StandIn> = {}): StandIn => ({
  part,
  use,
  twoWay: false,
  supersedes: false,
  effectivity: 'now',
  ...more,
});

describe('what may stand in for a part', () => {
  it('goes one way, or two where that is said', () => {
    const one = [link('A', 'B')];
    expect(usableFor('A', one).parts).toEqual(['A', 'B']);
    expect(usableFor('B', one).parts).toEqual(['B']);
    expect(usableFor('B', [link('A', 'B', { twoWay: true })]).parts).toEqual(['B', 'A']);
  });

  it('is not passed on by an alternate, but is by what superseded', () => {
    expect(usableFor('A', [link('A', 'B'), link('B', 'C')]).parts).toEqual(['A', 'B']);
    const chain = [link('A', 'B', { supersedes: true }), link('B', 'C', { supersedes: true }), link('B', 'X')];
    expect(usableFor('A', chain).parts).toEqual(['A', 'B', 'C']);
    expect(usableFor('B', chain).parts).toEqual(['B', 'C', 'X']);
    expect(usableFor('C', chain).parts).toEqual(['C']);
  });

  it('holds from its day on, for the day of the build', () => {
    const links = [link('A', 'B', { effectivity: 'from-date', from: '2026-03-10' })];
    expect(usableFor('A', links, '2026-03-09').parts).toEqual(['A']);
    expect(usableFor('A', links, '2026-03-10').parts).toEqual(['A', 'B']);
    expect(usableFor('A', links).parts).toEqual(['A', 'B']);
  });

  it('uses up what is left of the old before the new, whichever a list names, along the whole chain', () => {
    const chain = [
      link('A', 'B', { supersedes: true, twoWay: true, effectivity: 'until-used' }),
      link('B', 'C', { supersedes: true, twoWay: true, effectivity: 'until-used' }),
    ];
    for (const part of ['A', 'B', 'C']) expect(usableFor(part, chain).parts).toEqual(['A', 'B', 'C']);
    const usable = usableFor('C', chain);
    expect(usable.usedUpFirst('C')).toEqual(['B', 'A']);
    expect(usable.usedUpFirst('B')).toEqual(['A']);
    expect(usable.usedUpFirst('A')).toEqual([]);
  });

  it('names the part itself once, whatever the links are, and ends', () => {
    const part = fc.constantFrom('A', 'B', 'C', 'D');
    const links = fc.array(
      fc.record({
        part,
        use: part,
        twoWay: fc.boolean(),
        supersedes: fc.boolean(),
        effectivity: fc.constantFrom('now' as const, 'until-used' as const),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(part, links, (asked, given) => {
        const { parts } = usableFor(asked, given);
        expect(new Set(parts).size).toBe(parts.length);
        expect(parts).toContain(asked);
        for (const { part: one, use } of given) if (one === asked) expect(parts).toContain(use);
      }),
    );
  });
});
