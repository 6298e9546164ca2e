import { describe, expect, it } from '@jest/globals';
import { judgeValues, limitsInWords, type MeasureAsked, outsideInWords } from './judge-values.ts';

const width: MeasureAsked = {
  id: 'w',
  name: 'width at 24 in',
  unit: 'in',
  decimals: 3,
  method: 'absolute',
  low: '6.180',
  high: null,
  chart: null,
};
const torque: MeasureAsked = {
  id: 't',
  name: 'nut torque',
  unit: 'ft-lb',
  decimals: 0,
  method: 'rounding',
  low: '48',
  high: '54',
  chart: null,
};

describe('measured values of a step', () => {
  it('are judged each against its limits, inclusive, and kept digit for digit', () => {
    expect(
      judgeValues(
        [width, torque],
        [
          { measureId: 't', value: '54' },
          { measureId: 'w', value: '6.180' },
        ],
      ),
    ).toEqual([
      { measureId: 'w', value: '6.180', compared: '6.180', pass: true },
      { measureId: 't', value: '54', compared: '54', pass: true },
    ]);
  });

  // ASTM E29: the rounding method compares after rounding to the limit's place, the absolute method as read.
  it('are rounded only where the revision says so', () => {
    const [absolute] = judgeValues([width], [{ measureId: 'w', value: '6.1799' }]);
    const [rounded] = judgeValues([torque], [{ measureId: 't', value: '54.4' }]);
    expect(absolute).toMatchObject({ pass: false, compared: '6.1799' });
    expect(rounded).toMatchObject({ pass: true, compared: '54' });
  });

  it('must all be there, once each, and belong to the step', () => {
    const refused = (values: { measureId: string; value: string }[]) => () => judgeValues([width, torque], values);
    expect(refused([{ measureId: 'w', value: '6.2' }])).toThrow(
      expect.objectContaining({ type: 'values-missing', details: { missing: ['nut torque'] } }),
    );
    expect(refused([])).toThrow(expect.objectContaining({ type: 'values-missing' }));
    expect(refused([{ measureId: 'x', value: '1' }])).toThrow(expect.objectContaining({ type: 'value-unknown' }));
    expect(
      refused([
        { measureId: 'w', value: '6.2' },
        { measureId: 'w', value: '6.3' },
      ]),
    ).toThrow(expect.objectContaining({ type: 'value-unknown' }));
  });

  it('by narrowed limits, a good zero is out and not impossible, and rounding hides nothing', () => {
    const printed = { ...torque, low: '0', high: '10' };
    const narrowed = { ...printed, low: '0.5', high: '9.5', decimals: 1 };
    const read = (value: string) => judgeValues([narrowed], [{ measureId: 't', value }], [printed])[0];
    expect(read('0')).toMatchObject({ pass: false });
    expect(read('0.46')).toMatchObject({ pass: true, compared: '0.5' });
    expect(read('0.4')).toMatchObject({ pass: false });
    expect(read('9.9')).toMatchObject({ pass: false });
  });

  it('outside their limits are named with value and limits', () => {
    const judged = judgeValues(
      [width, torque],
      [
        { measureId: 'w', value: '6.1' },
        { measureId: 't', value: '47' },
      ],
    );
    expect(outsideInWords([width, torque], judged)).toEqual([
      'width at 24 in 6.1 in (limits at least 6.180 in)',
      'nut torque 47 ft-lb (limits 48 to 54 ft-lb)',
    ]);
    expect(limitsInWords({ low: null, high: '0.10', unit: 'in-lb', chart: null })).toBe('at most 0.10 in-lb');
  });

  it('of a bend go by the chart at the distance that was read, and allow nothing beyond it', () => {
    const points = [
      { at: '16', most: '2.0' },
      { at: '24', most: '6.5' },
    ];
    const none = { low: null, high: null, decimals: 1, method: 'absolute', chart: null };
    const distance = { ...none, id: 'd', name: 'bend distance', unit: 'in' };
    const angle = { ...none, id: 'a', name: 'bend angle', unit: 'degrees', chart: { by: 'bend distance', points } };
    const read = (at: string, degrees: string) =>
      judgeValues(
        [distance, angle],
        [
          { measureId: 'd', value: at },
          { measureId: 'a', value: degrees },
        ],
      )[1]?.pass;
    expect(read('24', '6.5')).toBe(true);
    expect(read('23.9', '2.1')).toBe(false);
    expect(read('30', '0.5')).toBe(false);
    expect(limitsInWords(angle)).toBe('at most, by bend distance: 2.0 at 16, 6.5 at 24 degrees');
  });
});
