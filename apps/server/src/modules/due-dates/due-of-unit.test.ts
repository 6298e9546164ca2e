import { describe, expect, it } from '@jest/globals';
import { type DueFacts, dueOfUnit } from './due-of-unit.ts';

const rule = { revision: 'M-1 rev. 2', hoursTenths: 24_000, months: 72, endOfMonth: false, requirement: 'recommended' };
/** On the aircraft it came from, at 1200.0 h when it was overhauled. */
function supposed(readings: { readOn: string; hoursTenths: number }[]): DueFacts['flying'] {
  const points = readings.map(({ readOn, hoursTenths }) => ({ date: readOn, tenths: hoursTenths }));
  return { kind: 'supposed', aircraftId: 'a', meter: 'tachometer', registration: 'ZZ-BMA', fromTenths: 12_000, points };
}
const facts: DueFacts = {
  overhaulOn: '2026-01-31',
  rules: [rule],
  flying: supposed([]),
  asOf: '2026-11-25',
};

describe('when a unit is next due', () => {
  it('is by calendar while nobody knows how much it flies', () => {
    expect(dueOfUnit(facts)).toMatchObject({
      dueOn: '2032-01-31',
      governedBy: 'calendar',
      dueHoursTenths: 36_000,
      requirement: 'recommended',
    });
  });

  it('is by hours when those come first', () => {
    const readings = [
      { readOn: '2026-02-01', hoursTenths: 12_000 },
      { readOn: '2026-11-01', hoursTenths: 24_000 },
    ];
    const due = dueOfUnit({ ...facts, flying: supposed(readings) });
    expect(due.governedBy).toBe('hours');
    expect(due.hoursLeftTenths).toBe(12_000);
    expect(Number(due.dueOn.slice(0, 4))).toBeLessThan(2029);
  });

  it('is unknown without an overhaul on record or without a rule, and says why', () => {
    expect(dueOfUnit({ ...facts, overhaulOn: null })).toMatchObject({
      dueOn: 'unknown',
      governedBy: 'none',
      basis: expect.stringContaining('No overhaul'),
    });
    expect(dueOfUnit({ ...facts, rules: [] })).toMatchObject({ dueOn: 'unknown', requirement: null });
    expect(dueOfUnit({ ...facts, overhaulOn: '2026-11-26' })).toMatchObject({
      dueOn: 'unknown',
      basis: expect.stringContaining('a day to come'),
    });
  });

  it('leaves readings out that contradict each other, and says so', () => {
    const readings = [{ readOn: '2026-05-01', hoursTenths: 11_000 }];
    expect(dueOfUnit({ ...facts, flying: supposed(readings) })).toMatchObject({
      dueOn: '2032-01-31',
      basis: expect.stringContaining('left out'),
    });
  });

  it('calls an interval required as soon as one rule requires it', () => {
    expect(dueOfUnit({ ...facts, rules: [rule, { ...rule, requirement: 'required' }] }).requirement).toBe('required');
  });

  it('tells why a rule counts that may not hold for it', () => {
    const doubts = ['A limit for serials QG1000 to QG1999 counts, as the serial cannot be compared.'];
    expect(dueOfUnit({ ...facts, doubts }).basis).toContain('serials QG1000 to QG1999 counts');
  });
});
