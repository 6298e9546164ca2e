import { describe, expect, it } from '@jest/globals';
import { refuseHours } from './check-arrival.ts';

type Arrival = Parameters<typeof refuseHours>[0];

describe('a unit that comes back', () => {
  const earlier = { on: '2026-01-05', tenths: 21_000, atLeastTenths: 21_000, atLeastCycles: 812 };
  const on = '2026-02-04';
  const back = (sinceNewCycles: number | 'unknown') =>
    ({
      times: { sinceNewTenths: 21_100, sinceOverhaulTenths: 'unknown', sinceNewCycles, meter: 'tachometer' },
      parts: [],
    }) as unknown as Arrival;

  it('has no fewer cycles since new than when it left; nobody knowing them is no fault', () => {
    expect(() => refuseHours(back(811), earlier, on)).toThrow('It had 812 cycles on 2026-01-05 already');
    for (const said of [812, 900, 'unknown'] as const) expect(() => refuseHours(back(said), earlier, on)).not.toThrow();
    expect(() => refuseHours(back(3), { ...earlier, atLeastCycles: 0 }, on)).not.toThrow();
  });

  it('has no fewer hours than were flown by then, even where nobody knows all of them, and no more than the clock', () => {
    const flown = { ...earlier, tenths: 'unknown' as const, atLeastTenths: 21_150 };
    expect(() => refuseHours(back(812), flown, on)).toThrow('It had 2115 h on 2026-01-05 already');
    expect(() => refuseHours(back(812), { ...flown, atLeastTenths: 21_100 }, on)).not.toThrow();
    const slow = { ...earlier, on: '2026-02-01', tenths: 20_000, atLeastTenths: 20_000 };
    expect(() => refuseHours(back(812), slow, on)).toThrow('More than 24 hours a day');
  });
});
