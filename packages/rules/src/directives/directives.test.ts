import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addMonths, endOfMonth } from '../dates/index.ts';
import {
  type Directive,
  type DirectiveRecord,
  type DirectiveUnit,
  decideDirective,
  firstDue,
  lastDayOfDeferral,
  serialPlace,
} from './index.ts';

const asOf = '2026-03-02';
const away = { asOf, visit: null };
const overhaul = { asOf, visit: { workOrderId: 'w2', isOverhaul: true } };
const line = { modelId: 'm', partNumber: null, serialFrom: null, serialTo: null };
const once: Directive = {
  ...{ id: 'd', repeats: 'one-time', effectiveOn: '2026-01-01', everyHoursTenths: null, everyMonths: null },
  ...{ endOfMonth: false, lines: [line], withdrawnOn: null, supersededBy: [], credits: [], endedBy: [] },
  first: { days: null, months: null, hoursTenths: null, totalTenths: null },
};
const yearly: Directive = { ...once, repeats: 'recurring', everyMonths: 12, everyHoursTenths: 5_000 };
const blade = { itemId: 'b1', name: 'blade 1', partNumber: 'Q-B7', serial: 'B100', hoursTenths: 12_000 };
const hub = { itemId: 'u', name: 'the unit', partNumber: 'Q3C', serial: 'QG1042', hoursTenths: 12_000 };
const unit: DirectiveUnit = { modelId: 'm', unit: hub, parts: [blade], silentOn: [] };
const done: DirectiveRecord = {
  ...{ directiveId: 'd', itemId: 'u', outcome: 'done', on: '2025-12-10', hoursTenths: 10_000 },
  ...{ terminating: false, until: null, workOrderId: 'w1' },
};
const verdict = (
  directive: Directive,
  records: DirectiveRecord[] = [],
  asked: Parameters<typeof decideDirective>[2]['asked'] = away,
) => decideDirective(directive, unit, { records, asked })[0];

describe('a directive’s serial range', () => {
  const range = { from: 'QG1000', to: 'QG1999' };
  it.each([
    ['QG1000', range, 'in'],
    ['qg-1999', range, 'in'],
    ['QG999', range, 'out'],
    ['QG02000', range, 'out'],
    ['QG10000', range, 'out'],
    ['ZX1500', range, 'out'],
    ['1500', range, 'look'],
    ['QGA1500', range, 'look'],
    ['QG1042A', range, 'look'],
    [null, range, 'look'],
    [null, {}, 'in'],
    ['ZX1', { from: 'QG1000' }, 'look'],
    ['QG5000', { from: 'QG1000' }, 'in'],
  ])('%s in %j: %s', (serial, asked, place) => {
    expect(serialPlace(serial, asked)).toBe(place);
  });
  it('is refused when it is none', () => {
    expect(() => serialPlace(null, { from: 'QG2000', to: 'QG1000' })).toThrow('ends before it begins');
  });
});

describe('a directive', () => {
  it('is open where it applies and nothing was done, and not due before it is in force', () => {
    expect(verdict(once)).toMatchObject({ itemId: 'u', state: 'open' });
    expect(verdict({ ...once, effectiveOn: '2026-03-03' })).toMatchObject({ state: 'not-due' });
  });
  it('does not apply to another model, once withdrawn, or once its successor is in force', () => {
    expect(verdict({ ...once, lines: [{ ...line, modelId: 'x' }] })?.state).toBe('not-applicable');
    expect(verdict({ ...once, withdrawnOn: asOf })?.state).toBe('not-applicable');
    expect(verdict({ ...once, supersededBy: [{ number: 'D-2', effectiveOn: asOf }] })?.reason).toBe(
      'Superseded by D-2',
    );
    expect(verdict({ ...once, supersededBy: [{ number: 'D-2', effectiveOn: '2026-03-03' }] })?.state).toBe('open');
  });
  it('follows the part by its number and serial, whatever it sits in', () => {
    const byPart = { ...once, lines: [{ modelId: null, partNumber: 'q-b7', serialFrom: 'B050', serialTo: 'B150' }] };
    expect(verdict(byPart)).toMatchObject({ itemId: 'b1', state: 'open' });
    expect(verdict(byPart, [{ ...done, itemId: 'b1' }])).toMatchObject({ state: 'complied' });
    expect(verdict({ ...byPart, lines: [{ ...byPart.lines[0]!, serialFrom: 'B101' }] })?.state).toBe('not-applicable');
  });
  it('is undecided where the record cannot tell, until somebody looked', () => {
    const doubtful = { ...once, lines: [{ ...line, serialFrom: 'QG1042A1' }] };
    expect(verdict(doubtful)).toMatchObject({
      state: 'undecided',
      reason: expect.stringContaining('cannot be compared'),
    });
    expect(verdict(doubtful, [{ ...done, outcome: 'does-not-apply' }])?.state).toBe('not-applicable');
    const sure = [{ ...done, outcome: 'does-not-apply' as const }];
    expect(verdict(once, sure)?.state).toBe('open');
    const silent = { ...once, lines: [{ ...line, partNumber: 'Q-9' }] };
    expect(verdict(silent)?.state).toBe('not-applicable');
    const [asked] = decideDirective(silent, { ...unit, silentOn: ['Q-9'] }, { records: [], asked: away });
    expect(asked).toMatchObject({ state: 'undecided', reason: 'Look: whether Q-9 is fitted is not on record' });
  });
  it('is complied with by work of one it gives credit for, and taken back by a later word', () => {
    const credit = { ...once, credits: ['old'] };
    expect(verdict(credit, [{ ...done, directiveId: 'old' }])?.state).toBe('complied');
    expect(verdict(once, [done, { ...done, outcome: 'taken-back' }])?.state).toBe('open');
    expect(verdict(once, [done, { ...done, outcome: 'taken-back' }, done])?.state).toBe('complied');
  });
  it('is ended by its terminating action or by another one', () => {
    expect(verdict(yearly, [{ ...done, on: '2020-01-01', terminating: true }])?.state).toBe('terminated');
    const ended = { ...yearly, endedBy: ['other'] };
    expect(verdict(ended, [{ ...done, directiveId: 'other' }])?.state).toBe('terminated');
  });
});

describe('a recurring directive', () => {
  it('is complied with until its day or its hours, whichever comes first', () => {
    const until = { date: '2026-12-10', hoursTenths: 15_000 };
    expect(verdict(yearly, [done])).toMatchObject({ state: 'complied', until });
    expect(verdict(yearly, [{ ...done, on: '2025-03-02' }])?.state).toBe('complied');
    expect(verdict(yearly, [{ ...done, on: '2025-03-01' }])).toMatchObject({
      state: 'open',
      reason: 'Fell due again on 2026-03-01',
    });
    expect(verdict(yearly, [{ ...done, hoursTenths: 7_000 }])).toMatchObject({
      state: 'open',
      reason: 'Fell due again at 1200.0 h since new',
    });
    const toMonthEnd = verdict({ ...yearly, endOfMonth: true }, [{ ...done, on: '2025-03-01' }]);
    expect(toMonthEnd?.until?.date).toBe('2026-03-31');
  });
  it('is undecided while the hours are unknown, unless it was done on this visit or its day has gone by', () => {
    const unknown = { ...done, hoursTenths: 'unknown' as const };
    expect(verdict(yearly, [unknown])?.state).toBe('undecided');
    expect(verdict(yearly, [{ ...unknown, workOrderId: 'w2', on: asOf }], overhaul)).toMatchObject({
      state: 'complied',
      reason: 'Done on 2026-03-02; again after 500.0 h or after 2027-03-02, whichever comes first',
    });
    expect(verdict(yearly, [{ ...unknown, on: '2025-01-01' }])?.state).toBe('open');
  });
});

describe('a directive at overhaul', () => {
  const each = { ...once, repeats: 'at-overhaul' as const };
  it('waits for the next overhaul, and asks for work done on that visit', () => {
    expect(verdict(each)?.state).toBe('not-due');
    expect(verdict(each, [done])?.state).toBe('complied');
    expect(verdict(each, [done], overhaul)?.state).toBe('open');
    expect(verdict(each, [done, { ...done, workOrderId: 'w2', on: asOf }], overhaul)?.state).toBe('complied');
  });
});

describe('a deferral', () => {
  const put = { ...done, outcome: 'deferred' as const, on: '2026-02-20', until: '2026-03-02' };
  it('holds through its last day, and never outlives work that came later', () => {
    expect(verdict(once, [put])).toMatchObject({ state: 'deferred', reason: 'Put off until 2026-03-02' });
    expect(verdict(once, [{ ...put, until: '2026-03-01' }])?.reason).toBe('The deferral ended on 2026-03-01');
    expect(verdict(yearly, [put, { ...done, on: '2025-01-01' }])?.state).toBe('open');
  });
  it('counts its days from the first in a row', () => {
    const asked = { itemId: 'u', asOf };
    expect(lastDayOfDeferral({ id: 'd', deferDays: 30 }, { ...asked, records: [] })).toBe('2026-04-01');
    expect(lastDayOfDeferral({ id: 'd', deferDays: 30 }, { ...asked, records: [put, put] })).toBe('2026-03-22');
    expect(lastDayOfDeferral({ id: 'd', deferDays: 30 }, { ...asked, records: [put, done] })).toBe('2026-04-01');
  });
});

describe('on any history', () => {
  const orLast = (date: string | null) => date ?? '9999-12-31';
  const records = fc.array(
    fc.record({
      outcome: fc.constantFrom('done', 'found-done', 'does-not-apply', 'deferred', 'taken-back') as fc.Arbitrary<
        DirectiveRecord['outcome']
      >,
      on: fc.integer({ min: 0, max: 40 }).map((months) => addMonths('2023-01-31', months)),
      hoursTenths: fc.oneof(fc.integer({ min: 0, max: 12_000 }), fc.constant('unknown' as const)),
    }),
    { maxLength: 6 },
  );
  const history = records.map((rows) =>
    rows.map((row) => ({ ...done, ...row, until: row.outcome === 'deferred' ? endOfMonth(row.on) : null })),
  );
  const months = fc.integer({ min: 1, max: 60 });
  const tenths = fc.integer({ min: 1, max: 20_000 });
  const rank = { open: 0, undecided: 1, deferred: 2, complied: 3 } as Record<string, number>;

  it('never falls due later when an interval tightens, nor when another directive is added', () => {
    fc.assert(
      fc.property(history, months, tenths, months, tenths, (rows, m, h, fewerM, fewerH) => {
        const wide = { ...yearly, everyMonths: m, everyHoursTenths: h };
        const tight = { ...wide, everyMonths: Math.max(1, m - fewerM), everyHoursTenths: Math.max(1, h - fewerH) };
        const [a, b] = [verdict(wide, rows)!, verdict(tight, rows)!];
        expect(rank[b.state]! <= rank[a.state]!).toBe(true);
        // A deferral's own day is not the interval's.
        if (a.state !== 'deferred' && b.state !== 'deferred')
          expect(orLast(firstDue([b]).date) <= orLast(firstDue([a]).date)).toBe(true);
        const [alone, both] = [firstDue([a]), firstDue([a, b])];
        expect(orLast(both.date) <= orLast(alone.date)).toBe(true);
        expect((both.hoursTenths ?? Infinity) <= (alone.hoursTenths ?? Infinity)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
