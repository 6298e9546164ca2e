import { describe, expect, it } from '@jest/globals';
import { type DueRow, factsOf, whereNow } from './due-facts.ts';
import { dueOfUnit } from './due-of-unit.ts';

const rule = {
  ...{ revision: 'M-1 rev. 2', hoursTenths: 24_000, months: 72, endOfMonth: false, requirement: 'recommended' },
  ...{ applicationId: null, serialFrom: null, serialTo: null },
  ...{ useCategory: null, ageFromMonths: null, ageToMonths: null },
};
const asOf = '2026-11-28';
const reading = (aircraftId: string, readOn: string, hoursTenths: number) => ({
  aircraftId,
  readOn,
  hoursTenths,
  meter: 'tachometer',
});
const interval = (aircraftId: string, from: [string, number | null], to?: [string, number | null]) => ({
  ...{
    id: `${aircraftId} ${from[0]}`,
    aircraftId,
    registration: `ZZ-${aircraftId}`,
    customerId: `owner of ${aircraftId}`,
  },
  ...{ position: 'left', meter: 'tachometer', from: from[0], fromTenths: from[1] },
  ...{ to: to?.[0] ?? null, toTenths: to?.[1] ?? null },
});
/** Overhauled on 2024-01-10 and shipped that day; it came from aircraft A at 1000.0 h. */
const row: DueRow = {
  ...{ id: 'u', model_id: 'm', designation: 'QN-3', maker: 'Quillon', serial: 'Q1', read_serial: 'Q1', in_shop: false },
  ...{ use_category: null, made_on: null },
  ...{ order_customer_id: 'c', order_aircraft_id: 'A', order_registration: 'ZZ-A', order_aircraft_customer_id: 'c' },
  ...{ overhaul_on: '2024-01-10', overhaul_meter: 'tachometer', overhaul_meter_tenths: 10_000, rules: [rule] },
  papers: [{ recordedOn: '2024-01-10', basis: 'overhaul', sinceNewTenths: null, sinceOverhaulTenths: 0 }],
  visits: [{ receivedOn: '2023-12-01', leftOn: '2024-01-10' }],
  ...{ intervals: [], changes: [], readings: [] },
};
const due = (changes: Partial<DueRow>, hoursPerMonth?: number) =>
  dueOfUnit({ ...factsOf({ ...row, ...changes }, asOf), hoursPerMonth });

describe('where the hours of a due date come from', () => {
  it('adds up what it flew on two aircraft and across a replaced meter', () => {
    // By hand, in tenths. On A: 12 000 − 10 500 = 1 500. On B from 3 000; meter replaced at 3 400 by one at 0; now 600:
    // 400 + 600 = 1 000. Since overhaul 2 500; 24 000 − 2 500 = 21 500 left; due at 600 + 21 500 = 22 100 on B's new meter.
    const answer = due({
      intervals: [interval('A', ['2024-02-01', 10_500], ['2025-03-01', 12_000]), interval('B', ['2025-03-10', 3_000])],
      changes: [{ aircraftId: 'B', meter: 'tachometer', on: '2026-01-15', oldTenths: 3_400, newTenths: 0 }],
      readings: [
        ...[reading('A', '2025-12-01', 15_000), reading('B', '2025-03-01', 2_950), reading('B', '2025-11-01', 3_300)],
        ...[reading('B', '2026-05-01', 300), reading('B', '2026-11-01', 600)],
      ],
    });
    expect(answer).toMatchObject({ hoursLeftTenths: 21_500, dueHoursTenths: 22_100 });
    expect(answer.basis).toContain('On ZZ-B since 2025-03-10.');
    // The use runs through the change: 300 + 400 … over a year, between 0.13 and 0.19 h a day whatever the weights.
    expect(Number(answer.perDay)).toBeGreaterThan(0.13);
    expect(Number(answer.perDay)).toBeLessThan(0.19);
  });

  it('off the wing hours stand still: the calendar answers and the basis says why', () => {
    const off = { intervals: [interval('A', ['2024-02-01', 10_500], ['2025-03-01', 12_000])] };
    const answer = due(off);
    expect(answer).toMatchObject({
      governedBy: 'calendar',
      dueOn: '2030-01-10',
      hoursLeftTenths: 22_500,
      dueHoursTenths: 'unknown',
    });
    expect(answer.basis).toContain('it is off ZZ-A since 2025-03-01, so its hours stand still');
    expect(whereNow({ ...row, ...off })).toMatchObject({ aircraft_id: null, registration: null, customer_id: 'c' });
    // Supposed to fly 300 h a month from today: 2250 h are 7.5 months of 365.25/12 days: 228.28 days.
    expect(due(off, 300)).toMatchObject({ governedBy: 'hours', dueOn: '2027-07-14' });
  });

  it('a removal at more than the limit is overdue though it lies on the shelf', () => {
    expect(due({ intervals: [interval('A', ['2024-02-01', 10_500], ['2025-03-01', 35_000])] })).toMatchObject({
      ...{ overdue: true, governedBy: 'hours', hoursLeftTenths: -500, dueOn: '2025-03-01' },
    });
  });

  it('where a figure is missing it counts what is known, and says that it may be due earlier', () => {
    const answer = due({
      intervals: [interval('A', ['2024-02-01', 10_500], ['2025-03-01', null]), interval('B', ['2025-03-10', 3_000])],
      readings: [
        reading('A', '2025-02-01', 11_500),
        reading('B', '2026-05-01', 4_000),
        reading('B', '2026-11-01', 5_000),
      ],
    });
    expect(answer).toMatchObject({ earliest: 'unknown', hoursLeftTenths: 'unknown', dueHoursTenths: 'unknown' });
    expect(answer.basis).toContain('at least 300.0 h only, so by hours it may be due earlier');
  });

  const [known, open] = [interval('B', ['2025-03-10', 3_000]), interval('B', ['2025-03-10', null])];
  it.each<[string, Partial<DueRow>, string]>([
    ['no reading at all', { intervals: [open] }, 'The hours at installation are unknown'],
    ['no reading since it was installed', { intervals: [known] }, 'there is one meter reading only (2025-03-10)'],
    [
      'one reading only',
      { intervals: [open], readings: [reading('B', '2026-11-01', 4_000)] },
      'there is one meter reading only (2026-11-01)',
    ],
    [
      'the last reading long ago',
      { intervals: [known], readings: [reading('B', '2025-06-01', 4_000)] },
      'older than 12 months (2025-06-01)',
    ],
    [
      'a parked aircraft',
      {
        intervals: [known],
        readings: ['2026-01-01', '2026-06-01', '2026-11-01'].map((on) => reading('B', on, 4_000)),
      },
      'the aircraft is parked: the meter stands since 2026-01-01',
    ],
  ])('%s: a calendar answer with the reason', (_, changes, why) => {
    const answer = due(changes);
    expect(answer).toMatchObject({ governedBy: 'calendar', dueOn: '2030-01-10', perDay: 'unknown' });
    expect(answer.basis).toContain(why);
    if (changes.readings || changes.intervals?.[0] === known)
      expect(due(changes, 40).basis).toContain('Supposed: 1.31 h a day');
  });

  it('nobody reported an installation: it is taken to fly on where it came from, and the basis says so', () => {
    const readings = [reading('A', '2026-05-01', 14_000), reading('A', '2026-11-01', 15_000)];
    const answer = due({ readings });
    expect(answer).toMatchObject({ dueHoursTenths: 34_000, hoursLeftTenths: 19_000 });
    expect(answer.basis).toContain('Nobody reported an installation since: it is taken to fly on ZZ-A');
  });

  it('on another owner’s aircraft it is that owner who is told', () => {
    const intervals = [interval('B', ['2025-03-10', 3_000])];
    expect(whereNow({ ...row, intervals })).toEqual({
      ...{ customer_id: 'owner of B', aircraft_id: 'B', registration: 'ZZ-B', position: 'left' },
    });
  });
});
