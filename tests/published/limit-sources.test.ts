import { type Directive, type DirectiveRecord, decideDirective } from '@hubwright/rules/directives';
import { lifeVerdict, sealDue } from '@hubwright/rules/due';
import { describe, expect, it } from '@jest/globals';

describe('the life of seals from their cure', () => {
  // A cure date names a quarter, and its last day counts as the day of manufacture: seal-trade pages that describe SAE ARP5316 (now AS5316).
  // Rows derived by hand: last day of the quarter and so many years on, usable on that day.
  it.each([
    ['4Q20', 15, '2035-12-31'],
    ['1Q24', 15, '2039-03-31'],
    ['2Q25', 15, '2040-06-30'],
    ['3Q19', 5, '2024-09-30'],
    ['4Q20', 3, '2023-12-31'],
  ])('cured %s, %i years: good through %s', (cured, years, good) => {
    const life = { installedMonths: null, curedMonths: years * 12, endOfMonth: false };
    expect(sealDue({ installedOn: '2021-01-01', cured }, life).on).toBe(good);
  });

  // MIL-HDBK-695E 3.3 and 3.4 (guidance only): shelf life ends when the seal is unpacked for installation, service life is another; ARP5316B
  // 1.1: storage limits say nothing of operating life. So months installed run from the fitting, whatever is left of the shelf life.
  it('installed life runs from the fitting, whichever of both comes first', () => {
    const life = { installedMonths: 60, curedMonths: 180, endOfMonth: false };
    expect(sealDue({ installedOn: '2025-05-31', cured: '4Q20' }, life).on).toBe('2030-05-31');
    expect(sealDue({ installedOn: '2033-05-31', cured: '4Q20' }, life).on).toBe('2035-12-31');
  });

  // 14 CFR 91.409(a), "calendar months": through the last day of the month. By hand.
  it.each([
    ['2025-06-06', 12, '2026-06-30'],
    ['2024-01-31', 1, '2024-02-29'],
  ])('fitted %s, %i months to the end of the month: %s', (installedOn, installedMonths, good) => {
    expect(sealDue({ installedOn, cured: null }, { installedMonths, curedMonths: null, endOfMonth: true }).on).toBe(
      good,
    );
  });
});

describe('what an owner’s record says', () => {
  // 14 CFR 91.417(a)(2)(v): of a directive the method, the number and revision date, and for a recurring one the time and date when it is due next.
  it('of a recurring directive names the hours and the day it is due next', () => {
    const directive: Directive = {
      ...{ id: 'd', repeats: 'recurring', effectiveOn: '2025-01-01', everyHoursTenths: 1_000, everyMonths: 12 },
      ...{ endOfMonth: false, withdrawnOn: null, supersededBy: [], credits: [], endedBy: [] },
      lines: [{ modelId: 'm', partNumber: null, serialFrom: null, serialTo: null }],
      first: { days: null, months: null, hoursTenths: null, totalTenths: null },
    };
    const done: DirectiveRecord = {
      ...{ directiveId: 'd', itemId: 'u', outcome: 'done', on: '2025-08-31', hoursTenths: 12_345, terminating: false },
      ...{ until: null, workOrderId: 'w' },
    };
    const unit = { itemId: 'u', name: 'the unit', partNumber: 'P', serial: 'S1', hoursTenths: 12_345 } as const;
    const [verdict] = decideDirective(
      directive,
      { modelId: 'm', unit, parts: [], silentOn: [] },
      { records: [done], asked: { asOf: '2025-09-01', visit: null } },
    );
    expect(verdict?.until).toEqual({ date: '2026-08-31', hoursTenths: 13_345 });
    expect(verdict?.reason).toBe(
      'Done on 2025-08-31; again at 1334.5 h since new or after 2026-08-31, whichever comes first',
    );
  });

  // 14 CFR 43.10(b) and 91.417(a)(2)(ii): the current status of a life-limited part is what it accumulated against its limit, in hours,
  // cycles or whatever else the limit is given in; a status nobody knows is not "current".
  it('of a life-limited part is what is left of each limit, and unknown is no status', () => {
    const limit = { hoursTenths: 60_000, cycles: 4_000, overhauls: 5 };
    expect(lifeVerdict(limit, { hoursTenths: 20_000, cycles: 3_999, overhauls: 5 })).toEqual({
      ...{ state: 'within', by: [] },
      left: { hoursTenths: 40_000, cycles: 1, overhauls: 0 },
    });
    expect(lifeVerdict(limit, { hoursTenths: 20_000, cycles: 'unknown', overhauls: 2 }).state).toBe('unknown');
  });
});
