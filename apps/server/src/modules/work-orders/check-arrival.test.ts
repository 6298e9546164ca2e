import { describe, expect, it } from '@jest/globals';
import { refuseHours } from './check-arrival.ts';

type Arrival = Parameters<typeof refuseHours>[0];

describe('a unit that comes back', () => {
  const earlier = { on: '2026-01-05', sinceNewTenths: 21_000, sinceNewCycles: 812 };
  const back = (sinceNewCycles: number | 'unknown') =>
    ({
      times: { sinceNewTenths: 21_100, sinceOverhaulTenths: 'unknown', sinceNewCycles, meter: 'tachometer' },
      parts: [],
    }) as unknown as Arrival;

  it('has no fewer cycles since new than when it left; nobody knowing them is no fault', () => {
    expect(() => refuseHours(back(811), earlier, 30)).toThrow('It had 812 cycles on 2026-01-05 already');
    for (const known of [812, 900, 'unknown'] as const)
      expect(() => refuseHours(back(known), earlier, 30)).not.toThrow();
    expect(() => refuseHours(back(3), { ...earlier, sinceNewCycles: null }, 30)).not.toThrow();
  });
});
