import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../dates/index.ts';
import { type DueByLimit, firstLimit } from './first-limit.ts';
import { sealDue } from './seal-life.ts';
import { type StoragePeriod, type StorageRule, storageCount } from './storage.ts';

const asOf = '2026-11-28';
const rules: StorageRule[] = [
  { preservation: 'long-term', counts: false, longestMonths: 24 },
  { preservation: 'short-term', counts: true, longestMonths: 6 },
];
const lay = (from: string, to: string | null, more: Partial<StoragePeriod> = {}): StoragePeriod => ({
  ...{ preservation: 'long-term', from, to, inspectedOn: null },
  ...more,
});
const count = (...periods: StoragePeriod[]) => storageCount(periods, { rules, since: '2024-01-01', asOf });

describe('time in storage', () => {
  it('is left out where the manual does not count it, counted by hand: January 2026 is 30 days to its 31st', () => {
    expect(count(lay('2026-01-01', '2026-01-31'))).toEqual({
      daysNotCounted: 30,
      inspectBy: null,
      says: [
        'In storage from 2026-01-01 to 2026-01-31: the manual does not count these 30 days toward limits in months.',
      ],
    });
  });

  it('counts where the manual counts it, and where it says nothing', () => {
    const short = count(lay('2026-01-01', '2026-01-31', { preservation: 'short-term' }));
    expect(short).toMatchObject({ daysNotCounted: 0, says: [expect.stringContaining('counts the time')] });
    const none = count(lay('2026-01-01', '2026-01-31', { preservation: 'none' }));
    expect(none).toMatchObject({ daysNotCounted: 0, says: [expect.stringContaining('says nothing')] });
  });

  it('before the overhaul is of no account, and across it only what came after', () => {
    expect(count(lay('2022-01-01', '2023-01-01')).says).toEqual([]);
    expect(count(lay('2023-12-01', '2024-01-11')).daysNotCounted).toBe(10);
  });

  it('has a longest time without an inspection while it lies there', () => {
    expect(count(lay('2025-10-31', null)).inspectBy).toBe('2027-10-31');
    expect(count(lay('2025-10-31', null, { inspectedOn: '2026-05-31' })).inspectBy).toBe('2028-05-31');
    expect(count(lay('2026-08-31', null, { preservation: 'short-term' })).inspectBy).toBe('2027-02-28');
    expect(count(lay('2025-10-31', '2026-10-31')).inspectBy).toBeNull();
  });

  it('cannot be two at once', () => {
    expect(() => count(lay('2026-01-01', null), lay('2026-02-01', null))).toThrow('already');
    expect(() => count(lay('2026-02-01', '2026-01-01'))).toThrow('before it was put');
  });
});

describe('a fitted seal', () => {
  const life = { installedMonths: 60, curedMonths: 120, endOfMonth: false };

  it('is good to the first of its months installed and its months from cure, counted by hand', () => {
    expect(sealDue({ installedOn: '2026-01-31', cured: '4Q25' }, life)).toEqual({
      on: '2031-01-31',
      why: '60 months from its fitting on 2026-01-31',
    });
    expect(sealDue({ installedOn: '2026-01-31', cured: '4Q18' }, life)).toEqual({
      on: '2028-12-31',
      why: '120 months from its cure, 4Q18',
    });
  });

  it('without its cure date is told by its fitting alone, and says so', () => {
    expect(sealDue({ installedOn: '2026-01-31', cured: null }, life).why).toContain('cure date is not on record');
    expect(sealDue({ installedOn: '2026-01-31', cured: null }, { ...life, installedMonths: null })).toEqual({
      on: null,
      why: 'its cure date is not on record',
    });
    expect(sealDue({ installedOn: '2026-02-10', cured: null }, { ...life, endOfMonth: true }).on).toBe('2031-02-28');
  });
});

describe('whichever comes first', () => {
  const due = (dueOn: string, more: Partial<DueByLimit> = {}): DueByLimit => ({
    ...{ kind: 'calendar', what: dueOn, dueOn, earliest: dueOn, latest: dueOn, overdue: false },
    requirement: 'recommended',
    ...more,
  });

  it('names what governs; what has no date bounds nothing, and on one day what is required goes first', () => {
    expect(firstLimit([due('2027-01-01'), due('unknown'), due('2026-12-31')])).toMatchObject({
      dueOn: '2026-12-31',
      governing: { what: '2026-12-31' },
    });
    const required = due('2027-01-01', { what: 'directive', requirement: 'required' });
    expect(firstLimit([due('2027-01-01'), required]).governing?.what).toBe('directive');
    expect(firstLimit([due('2027-01-01'), due('2027-06-01', { earliest: 'unknown' })]).earliest).toBe('unknown');
    expect(firstLimit([])).toMatchObject({ dueOn: 'unknown', overdue: false, governing: undefined });
  });

  const some = fc
    .record({ at: fc.integer({ min: -400, max: 4000 }), early: fc.nat(200), late: fc.nat(200), unknown: fc.boolean() })
    .map(({ at, early, late, unknown }) =>
      unknown
        ? due('unknown')
        : due(addDays(asOf, at), {
            ...{ earliest: addDays(asOf, at - early), latest: addDays(asOf, at + late), overdue: at < 0 },
          }),
    );
  const orNever = (date: string) => (date === 'unknown' ? '9999-12-31' : date);

  it('never moves later for one more limit or a tighter one, of whatever source', () => {
    fc.assert(
      fc.property(fc.array(some, { maxLength: 5 }), some, fc.nat(300), (limits, more, sooner) => {
        const before = firstLimit(limits);
        const added = firstLimit([...limits, more]);
        const tighter = firstLimit(
          limits.map((one) =>
            one.dueOn === 'unknown'
              ? one
              : {
                  ...one,
                  ...{ dueOn: addDays(one.dueOn, -sooner), earliest: addDays(one.earliest, -sooner) },
                  latest: addDays(one.latest, -sooner),
                },
          ),
        );
        for (const after of [added, tighter])
          for (const field of ['dueOn', 'earliest', 'latest'] as const)
            expect(orNever(after[field]) <= orNever(before[field])).toBe(true);
        expect(added.overdue || !before.overdue).toBe(true);
      }),
    );
  });

  it('of storage, never moves later when the manual comes to count it or when it lay there for less', () => {
    const period = fc.tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 0, max: 300 }));
    fc.assert(
      fc.property(period, fc.nat(100), ([start, days], less) => {
        const from = addDays('2025-01-01', start);
        const whole = count(lay(from, addDays(from, days)));
        const shorter = count(lay(from, addDays(from, Math.max(0, days - less))));
        expect(shorter.daysNotCounted).toBeLessThanOrEqual(whole.daysNotCounted);
        expect(count(lay(from, addDays(from, days), { preservation: 'short-term' })).daysNotCounted).toBe(0);
      }),
    );
  });
});
