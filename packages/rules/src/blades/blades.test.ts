import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  bandFault,
  diameterUnknown,
  judgeSet,
  type LimitTable,
  limitsNow,
  mostBend,
  opposite,
  takenOff,
} from './index.ts';

const table: LimitTable = {
  ...{ low: '4.400', high: null, oversizes: [] },
  byDiameter: [
    { from: '74.0', to: '74.9', low: '4.520', high: null },
    { from: '75.0', to: '76.0', low: '4.400', high: null },
  ],
};

describe('limits by current diameter', () => {
  it('are those of the band the diameter lies in, ends included', () => {
    expect(limitsNow(table, { diameter: '75', oversize: null })).toEqual({
      low: '4.400',
      high: null,
      basis: 'diameter 75',
    });
    expect(limitsNow(table, { diameter: '74.9', oversize: null }).low).toBe('4.520');
  });
  it('are none while the diameter is not on record, and say so', () => {
    const unknown = { low: null, high: null, basis: diameterUnknown };
    expect(limitsNow(table, { diameter: null, oversize: null })).toEqual(unknown);
  });
  it('do not exist between bands or outside of them', () => {
    expect(() => limitsNow(table, { diameter: '74.95', oversize: null })).toThrow(/no limits for a diameter of 74.95/);
    expect(() => limitsNow(table, { diameter: '72', oversize: null })).toThrow(/no limits/);
  });
  it('may not overlap or run backwards', () => {
    expect(bandFault(table.byDiameter)).toBeUndefined();
    expect(
      bandFault([
        { from: '74', to: '75' },
        { from: '75', to: '76' },
      ]),
    ).toBe(1);
    expect(bandFault([{ from: '74', to: '73' }])).toBe(0);
    expect(
      bandFault([
        { from: '74.5', to: '75' },
        { from: '74', to: '76' },
      ]),
    ).toBe(1);
  });
});

describe('limits by oversize step', () => {
  const bore: LimitTable = {
    ...{ low: '4.1240', high: '4.1275', byDiameter: [] },
    oversizes: [{ step: '+0.005', low: '4.1290', high: '4.1325' }],
  };
  it('are the base limits until a step is remembered, then those of the step', () => {
    expect(limitsNow(bore, { diameter: null, oversize: null })).toEqual({ low: '4.1240', high: '4.1275', basis: null });
    expect(limitsNow(bore, { diameter: null, oversize: '+0.005' })).toEqual({
      ...{ low: '4.1290', high: '4.1325', basis: 'oversize +0.005' },
    });
  });
  it('know no step that the manual does not name', () => {
    expect(() => limitsNow(bore, { diameter: null, oversize: '+0.010' })).toThrow(/no oversize step/);
  });
});

describe('a bend against its chart', () => {
  const chart = [
    { at: '16', most: '2.0' },
    { at: '24', most: '6.5' },
    { at: '36', most: '12' },
  ];
  it('is allowed what the printed point says, and the less of two neighbours between them', () => {
    expect(mostBend(chart, '24.0')).toBe('6.5');
    expect(mostBend(chart, '30')).toBe('6.5');
    expect(mostBend(chart, '16.5')).toBe('2.0');
  });
  it('is allowed nothing where the chart says nothing', () => {
    expect(mostBend(chart, '15.9')).toBeNull();
    expect(mostBend(chart, '36.1')).toBeNull();
  });
  it('is never allowed more than the straight line between two points would', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1600, max: 3600 }), (hundredths) => {
        const at = hundredths / 100;
        const most = Number(mostBend(chart, at.toFixed(2)));
        const line = at <= 24 ? 2 + ((at - 16) * 4.5) / 8 : 6.5 + ((at - 24) * 5.5) / 12;
        expect(most).toBeLessThanOrEqual(line + 1e-9);
      }),
    );
  });
  it('needs points that rise', () => {
    expect(() => mostBend([{ at: '2', most: '1' }], '2')).toThrow(/two points/);
    expect(() =>
      mostBend(
        [
          { at: '2', most: '1' },
          { at: '2', most: '3' },
        ],
        '2',
      ),
    ).toThrow(/rise/);
  });
});

describe('the blades of a set', () => {
  const blade = (position: number, width?: string) => ({
    position,
    values: new Map(width === undefined ? [] : [['width at 30', width]]),
  });
  const limit = { key: 'width at 30', most: '0.060', among: 'set' } as const;
  it('stand opposite each other only where their number is even', () => {
    expect([1, 2, 3, 4].map((position) => opposite(position, 4))).toEqual([3, 4, 1, 2]);
    expect(opposite(1, 2)).toBe(2);
    expect(opposite(1, 3)).toBeNull();
    expect(opposite(5, 4)).toBeNull();
  });
  it('are judged by the two that differ most; a difference equal to the limit is in', () => {
    const [spread] = judgeSet([blade(1, '5.700'), blade(2, '5.640'), blade(3, '5.701')], [limit]);
    expect(spread).toMatchObject({ widest: { spread: '0.061', between: [2, 3] }, verdict: 'fail' });
    expect(judgeSet([blade(1, '5.7'), blade(2, '5.64')], [limit])[0]?.verdict).toBe('pass');
  });
  it('are incomplete while one is not measured, unless two differ too much already', () => {
    expect(judgeSet([blade(1, '5.7'), blade(2), blade(3, '5.7')], [limit])[0]).toMatchObject({
      missing: [2],
      verdict: 'incomplete',
    });
    expect(judgeSet([blade(1, '5.7'), blade(2), blade(3, '5.5')], [limit])[0]?.verdict).toBe('fail');
    expect(judgeSet([blade(1), blade(2)], [limit])[0]).toMatchObject({ widest: null, verdict: 'incomplete' });
  });
  it('are compared only across the hub where the manual says so', () => {
    const blades = [blade(1, '5.70'), blade(2, '5.50'), blade(3, '5.69'), blade(4, '5.51')];
    expect(judgeSet(blades, [{ ...limit, among: 'opposite' }])[0]).toMatchObject({
      widest: { spread: '0.01' },
      verdict: 'pass',
    });
    expect(judgeSet(blades, [limit])[0]?.verdict).toBe('fail');
  });
  it('never pass when any allowed pair is too far apart, in whatever order they come', () => {
    const widths = fc.array(fc.integer({ min: 5000, max: 5200 }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(widths, (thousandths) => {
        const blades = thousandths.map((one, index) => blade(index + 1, (one / 1000).toFixed(3)));
        const isFar = Math.max(...thousandths) - Math.min(...thousandths) > 60;
        expect(judgeSet(blades.reverse(), [limit])[0]?.verdict).toBe(isFar ? 'fail' : 'pass');
      }),
    );
  });
});

it('what was taken off has no stray digits', () => {
  expect(takenOff('0.3', '0.1')).toBe('0.2');
  expect(takenOff('6.940', '6.945')).toBe('-0.005');
});
