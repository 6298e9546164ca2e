import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type ChargeSpec, chargeWanted, interpolate, judgeCharge, sayCharge } from './index.ts';

const spec: ChargeSpec = {
  ...{ medium: 'dry nitrogen', unit: 'psi', temperatureUnit: 'degF', tolerance: '3', settleMinutes: 30 },
  table: [
    { at: '40', pressure: '168' },
    { at: '60', pressure: '175' },
    { at: '80', pressure: '183' },
  ],
};
const read = { medium: 'dry nitrogen', temperature: '70', settledMinutes: '30', pressure: '180' };
const judged = (more: Partial<typeof read> = {}) => judgeCharge({ ...read, ...more }, spec);

describe('a charge by its temperature', () => {
  it('is asked for on a straight line between two rows, and on a row as it stands', () => {
    expect(chargeWanted(spec, '70')).toEqual({ wanted: '179.0', low: '176.0', high: '182.0' });
    expect(chargeWanted(spec, '40').wanted).toBe('168.0');
    expect(chargeWanted(spec, '80').wanted).toBe('183.0');
    // 60 + 1/3 of a degree of 8 psi in 20: 175.1333…, its band rounded inwards.
    expect(chargeWanted(spec, '60.33333333')).toEqual({ wanted: '175.1', low: '172.2', high: '178.1' });
  });
  it('is never extrapolated, and a temperature in the other unit is doubted', () => {
    expect(() => judged({ temperature: '39.9' })).toThrow(
      '39.9 °F lies outside of the table, which goes from 40 to 80: it is not charged at this temperature.',
    );
    expect(() => judged({ temperature: '21' })).toThrow(/21 °C would be inside: look at the unit/);
    expect(() => judged({ temperature: '80.1' })).toThrow(/outside of the table/);
  });
  it('is good to the very limit, and not a thousandth beyond', () => {
    expect(judged({ pressure: '182' })).toEqual({ good: true, reasons: [], wanted: '179.0' });
    expect(judged({ pressure: '182.001' }).reasons).toEqual(['182.001 psi; 176.0 to 182.0 is asked for at 70 °F.']);
    expect(judged({ pressure: '176' }).good).toBe(true);
  });
  it('doubts another unit of the gauge and refuses what is no pressure', () => {
    expect(judged({ pressure: '1234' }).reasons).toEqual([
      expect.stringContaining('1234 kPa would be inside: look at the unit of the gauge.'),
    ]);
    expect(() => judged({ pressure: '4000' })).toThrow(/twenty times/);
    expect(() => judged({ pressure: '-180' })).toThrow(/below zero/);
    expect(() => judged({ pressure: 'x' })).toThrow(/no decimal number/);
  });
  it('is read after it settled, with the medium asked for', () => {
    expect(judged({ settledMinutes: '29.9' }).reasons).toEqual(['Read after 29.9 min; it settles for 30 min first.']);
    expect(judged({ medium: 'dry air' }).reasons).toEqual(['Charged with dry air; dry nitrogen is asked for.']);
    expect(() => judged({ settledMinutes: '-1' })).toThrow(/below zero/);
  });
  it('needs a table that ascends', () => {
    expect(() => interpolate([{ at: '1', pressure: '1' }], '1')).toThrow(/two rows/);
    expect(() => interpolate([...spec.table].reverse(), '60')).toThrow(/coldest first/);
  });
  it('says what was asked for beside what was read', () => {
    expect(sayCharge(read, spec, judged())).toContainEqual({
      name: 'pressure by the table',
      value: '179.0 ± 3 psi',
    });
  });
  it('never leaves the two rows it lies between, and goes up where they do', () => {
    const rows = fc.uniqueArray(fc.integer({ min: -60, max: 140 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(
        rows,
        fc.infiniteStream(fc.integer({ min: 10, max: 900 })),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (ats, pressures, share) => {
          const table = ats
            .sort((a, b) => a - b)
            .map((at) => ({ at: String(at), pressure: String(pressures.next().value) }));
          const [least, most] = [Number(table[0]?.at), Number(table.at(-1)?.at)];
          const at = Math.min(Math.max(least + share * (most - least), least), most).toFixed(4);
          fc.pre(Number(at) >= least && Number(at) <= most);
          const after = table.findIndex((row) => Number(row.at) >= Number(at));
          const ends = [table[Math.max(after - 1, 0)], table[after]].map((row) => Number(row?.pressure));
          const found = interpolate(table, at).toNumber();
          expect(found).toBeGreaterThanOrEqual(Math.min(...ends) - 1e-9);
          expect(found).toBeLessThanOrEqual(Math.max(...ends) + 1e-9);
        },
      ),
    );
  });
});
