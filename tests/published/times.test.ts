import { describe, expect, it } from '@jest/globals';
import { unitsInTime } from '../../packages/rules/src/times/index.ts';

// 14 CFR 91.417(a)(2)(i) asks for total time in service and (iii) for time since last overhaul. The regulation prints no
// worked example: these figures are derived by hand, and added in tenths because 0.1 + 0.2 is not 0.3 in binary.
describe('time in service', () => {
  const times = (fromTenths: number, flights: number[]) => {
    const readings = flights.map((_, i) => ({
      meter: 'hour meter',
      date: `2026-01-${String(i + 2).padStart(2, '0')}`,
      tenths: flights.slice(0, i + 1).reduce((sum, tenths) => sum + tenths, fromTenths),
    }));
    return unitsInTime({
      asOf: '2026-02-01',
      carried: { date: '2025-12-01', sinceNewTenths: fromTenths, sinceOverhaulTenths: 'unknown' },
      overhauls: ['2025-12-15'],
      installations: [{ meter: 'hour meter', from: '2026-01-01', fromTenths }],
      readings,
    });
  };

  it('1234.5 + 0.7 + 0.7 + 0.6 is 1236.5 since new and 2.0 since overhaul', () => {
    expect(times(12_345, [7, 7, 6])).toMatchObject({ sinceNew: { tenths: 12_365 }, sinceOverhaul: { tenths: 20 } });
  });

  it('overhauled at 1234.5, now 1630.2, is 395.7 since overhaul', () => {
    expect(times(12_345, [3957]).sinceOverhaul.tenths).toBe(3957);
  });
});
