import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Directive, type DirectiveItem, decideDirective, type FirstWindow } from './index.ts';

const none: FirstWindow = { days: null, months: null, hoursTenths: null, totalTenths: null };
const directive = (first: Partial<FirstWindow>): Directive => ({
  ...{ id: 'd', repeats: 'one-time', effectiveOn: '2026-01-31', everyHoursTenths: null, everyMonths: null },
  ...{ endOfMonth: false, withdrawnOn: null, supersededBy: [], credits: [], endedBy: [] },
  lines: [{ modelId: 'm', partNumber: null, serialFrom: null, serialTo: null }],
  first: { ...none, ...first },
});
const hub: DirectiveItem = {
  ...{ itemId: 'u', name: 'the unit', partNumber: 'Q3C', serial: 'QG1042', hoursTenths: 12_400 },
  earlier: [
    { on: '2025-12-01', hoursTenths: 12_000 },
    { on: '2026-02-20', hoursTenths: 12_300 },
  ],
};
const asked = (asOf: string) => ({ asOf, visit: null });
const verdict = (first: Partial<FirstWindow>, asOf: string, item: Partial<DirectiveItem> = {}) =>
  decideDirective(
    directive(first),
    { modelId: 'm', unit: { ...hub, ...item }, parts: [], silentOn: [] },
    { records: [], asked: asked(asOf) },
  )[0];

// Counted by hand.
describe('the time a directive gives for its first action', () => {
  it('runs from the day it is in force; its last day is good, the next is not', () => {
    expect(verdict({ days: 30 }, '2026-03-02')).toMatchObject({
      state: 'not-due',
      reason: 'First to be done by 2026-03-02',
      until: { date: '2026-03-02', hoursTenths: null },
    });
    expect(verdict({ days: 30 }, '2026-03-03')).toMatchObject({
      state: 'open',
      reason: 'It was to be done by 2026-03-02',
    });
    expect(verdict({ months: 1 }, '2026-02-28')?.until?.date).toBe('2026-02-28');
    expect(verdict({ months: 12, days: 30 }, '2026-02-28')?.until?.date).toBe('2026-03-02');
  });

  it('in hours counts from what was on record when it came into force, whichever comes first', () => {
    expect(verdict({ hoursTenths: 1_000, months: 12 }, '2026-03-02')).toMatchObject({
      state: 'not-due',
      reason: 'First to be done before 1300.0 h since new or by 2027-01-31, whichever comes first',
      until: { date: '2027-01-31', hoursTenths: 13_000 },
    });
    expect(verdict({ hoursTenths: 400 }, '2026-03-02')?.state).toBe('open');
    expect(verdict({ hoursTenths: 401 }, '2026-03-02')?.state).toBe('not-due');
    expect(verdict({ totalTenths: 12_400 }, '2026-03-02')?.state).toBe('open');
    expect(verdict({ totalTenths: 12_500, hoursTenths: 1_000 }, '2026-03-02')?.until?.hoursTenths).toBe(12_500);
  });

  it('is undecided where hours are asked and nobody knows them, and open all the same once its day has passed', () => {
    expect(verdict({ hoursTenths: 1_000 }, '2026-03-02', { earlier: [] })).toMatchObject({
      state: 'undecided',
      reason: 'It is to be done within 100.0 h of its coming into force, and its hours since new are not known',
    });
    expect(verdict({ totalTenths: 13_000 }, '2026-03-02', { hoursTenths: 'unknown' })?.state).toBe('undecided');
    expect(verdict({ hoursTenths: 1_000, days: 5 }, '2026-03-02', { earlier: [] })?.state).toBe('open');
  });

  it('without such a time is due at once', () => {
    expect(verdict({}, '2026-03-02')?.state).toBe('open');
  });

  it('never lets it wait longer when the window tightens', () => {
    const size = fc.integer({ min: 1, max: 4_000 });
    const order = ['not-due', 'undecided', 'open'];
    fc.assert(
      fc.property(size, size, size, (days, hoursTenths, less) => {
        const wide = verdict({ days, hoursTenths }, '2027-03-02');
        const tight = verdict(
          { days: Math.max(1, days - less), hoursTenths: Math.max(1, hoursTenths - less) },
          '2027-03-02',
        );
        expect(order.indexOf(tight?.state ?? '')).toBeGreaterThanOrEqual(order.indexOf(wide?.state ?? ''));
        expect((tight?.until?.date ?? '9') <= (wide?.until?.date ?? '9')).toBe(true);
      }),
    );
  });
});
