import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { arrangeBlades, judgeSet } from './index.ts';

describe('blades matched by static moment', () => {
  const set = (...moments: string[]) =>
    moments.map((moment, i) => ({ position: i + 1, values: new Map([['static-moment', moment]]) }));
  const judged = (limit: object, ...moments: string[]) =>
    judgeSet(set(...moments), [{ key: 'static-moment', most: '1.0', among: 'set', ...limit }])[0];

  it('are held against a master, to the very end of what it allows', () => {
    const master = { among: 'master', master: '398.0' } as const;
    expect(judged(master, '399.0', '397.2')).toMatchObject({ verdict: 'pass', widest: { spread: '1', between: [1] } });
    expect(judged(master, '399.0', '396.9')).toMatchObject({
      verdict: 'fail',
      widest: { spread: '1.1', between: [2] },
    });
  });
  it('are held against each other where there is no master', () => {
    expect(judged({}, '399.0', '397.9', '398.4')).toMatchObject({ verdict: 'fail', widest: { between: [1, 2] } });
  });

  it('go opposite the one nearest to them', () => {
    expect(arrangeBlades(['398.0', '398.0', '398.6', '398.6'])).toEqual({
      ...{ order: [1, 3, 2, 4], left: expect.closeTo(0, 9) },
      // Two differences of 0.6 at a right angle.
      now: expect.closeTo(0.6 * Math.SQRT2, 9),
    });
  });
  it('stay where they are when no order is better, and are not turned about for nothing', () => {
    expect(arrangeBlades(['10', '12', '10', '12'])?.order).toEqual([1, 2, 3, 4]);
    expect(arrangeBlades(['10', '11', '12'])).toBeUndefined();
  });
  it('never leave more than any other order of them', () => {
    const moments = fc.array(fc.integer({ min: 3900, max: 4100 }), { minLength: 4, maxLength: 6 });
    fc.assert(
      fc.property(moments, fc.integer(), (tenths, seed) => {
        const texts = tenths.map((one) => (one / 10).toFixed(1));
        const found = arrangeBlades(texts)!;
        const shuffled = texts
          .map((text, i) => ({ text, key: Math.sin(seed + i * 7.3) }))
          .sort((a, b) => a.key - b.key);
        const other = arrangeBlades(shuffled.map(({ text }) => text))!;
        expect(found.left).toBeLessThanOrEqual(other.now + 1e-9);
        expect(found.left).toBeCloseTo(other.left, 9);
        expect([...found.order].sort()).toEqual(texts.map((_, i) => i + 1));
      }),
    );
  });
});
