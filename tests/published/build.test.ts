import { describe, expect, it } from '@jest/globals';
import { interpolate } from '../../packages/rules/src/charge/index.ts';
import { type Adapter, settingFor, torqueAt } from '../../packages/rules/src/torque/index.ts';

const arm = (lever: string, length: string, effect: Adapter['effect'] = 'longer') => ({ lever, length, effect });

describe('a torque wrench with an adapter', () => {
  // TM 1-1500-204-23-9, general aircraft maintenance manual, 8-5, figure 8-16: 300 in-lb, lever 10 in, attachment 4 in.
  it('is set to 214 for 300 (TM 1-1500-204-23-9)', () => {
    expect(settingFor('300', arm('10', '4'), 0)).toBe('214');
  });
  // TM 9-254, general maintenance procedures, figure 45: set to 60 in-lb, wrench 12 in, extension 2 in.
  it('gives 70 at a setting of 60 (TM 9-254)', () => {
    expect(torqueAt('60', arm('12', '2'), 0)).toBe('70');
    expect(settingFor('70', arm('12', '2'), 0)).toBe('60');
  });
  // Navy aviation training course 14315, figures 3-44 and 3-45: 100 in-lb at the end, handle 12 in, extension 6 in.
  it('is set to 66.7 for 100 (Navy training course 14315)', () => {
    expect(settingFor('100', arm('12', '6'), 1)).toBe('66.7');
  });
  // AC 43.13-1B, 7-40h, asks for the adjustment; the example of its figure 7-2 from memory, both figures agreeing with a second
  // maintenance handbook: 135 in-lb, lever 10 in, adapter 1.5 in, longer and shorter.
  it('is set to 117 and 159 for 135 (AC 43.13-1B, figure 7-2, from memory)', () => {
    expect(settingFor('135', arm('10', '1.5'), 2)).toBe('117.39');
    expect(settingFor('135', arm('10', '1.5', 'shorter'), 2)).toBe('158.82');
  });
});

describe('a table read between its rows', () => {
  // Course notes EML 3100 (mechanical engineering, linear interpolation): saturated steam, 5.628 kPa at 35 °C and 7.384 kPa at 40 °C,
  // asked for at 38 °C. The inputs are the notes'; the answer is recomputed by hand: 5.628 + 3/5 × 1.756.
  it('saturated steam at 38 °C', () => {
    const table = [
      { at: '35', pressure: '5.628' },
      { at: '40', pressure: '7.384' },
    ];
    expect(interpolate(table, '38').toString()).toBe('6.6816');
  });
  // Gay-Lussac's law: at constant volume absolute pressure goes with absolute temperature, so that a table of it has straight lines
  // and what is read between its rows is the law itself. 0 °C is 273.15 K (NIST SP 811, B.8).
  it('is the gas law where the table is', () => {
    const at = (celsius: number) => (1000 * (celsius + 273.15)) / 273.15;
    const table = [-40, 0, 15, 50].map((celsius) => ({ at: String(celsius), pressure: at(celsius).toFixed(8) }));
    for (const celsius of [-39.5, -20, 0, 7.3, 14.9, 15.1, 33, 50])
      expect(interpolate(table, String(celsius)).toNumber()).toBeCloseTo(at(celsius), 6);
  });
});
