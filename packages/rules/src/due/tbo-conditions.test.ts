import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { rulesInForce, type TboCondition, type TboUnit } from './tbo-conditions.ts';

const every: TboCondition = {
  ...{ applicationId: null, serialFrom: null, serialTo: null, useCategory: null },
  ...{ ageFromMonths: null, ageToMonths: null },
};
const rule = (months: number, more: Partial<TboCondition> = {}) => ({ ...every, months, ...more });
const known: TboUnit = { serial: 'QA1200', use: 'normal', madeOn: '2015-06-30', overhauledOn: '2025-06-30' };
const months = (rules: readonly ReturnType<typeof rule>[], unit: Partial<TboUnit> = {}) =>
  rulesInForce(rules, { ...known, ...unit }).rules.map((one) => one.months);

describe('the interval of a unit', () => {
  const byUse = [rule(72), rule(60, { useCategory: 'acrobatic' }), rule(36, { useCategory: 'agricultural' })];

  it('is that for its use, in place of the one for every use', () => {
    expect(months(byUse, { use: 'agricultural' })).toEqual([36]);
    expect(months(byUse, { use: 'normal' })).toEqual([72]);
  });

  it('takes every one while nobody said the use, and says so for each', () => {
    const { rules, doubts } = rulesInForce(byUse, { ...known, use: null });
    expect(rules).toHaveLength(3);
    expect(doubts).toEqual([
      'A limit for acrobatic use counts, as nobody said how the unit is used: the strictest holds.',
      'A limit for agricultural use counts, as nobody said how the unit is used: the strictest holds.',
    ]);
  });

  it('takes the rules for other uses where there is none for this one, rather than none at all', () => {
    const { rules, doubts } = rulesInForce(byUse.slice(1), { ...known, use: 'floats' });
    expect(rules).toHaveLength(2);
    expect(doubts[0]).toBe('A limit for acrobatic use counts, as the manual names none for floats use.');
  });

  it('goes by the age on the day of the overhaul, to the month: at 120 months a rule from 120 months holds', () => {
    const byAge = [rule(72, { ageToMonths: 120 }), rule(48, { ageFromMonths: 120 })];
    expect(months(byAge)).toEqual([48]);
    expect(months(byAge, { overhauledOn: '2025-06-29' })).toEqual([72]);
    const { rules, doubts } = rulesInForce(byAge, { ...known, madeOn: null });
    expect(rules).toHaveLength(2);
    expect(doubts[1]).toBe('A limit for units from 120 months of age counts, as the day it was made is not on record.');
  });

  it('goes by the serial; one that cannot be compared counts', () => {
    const early = rule(60, { serialFrom: 'QA1000', serialTo: 'QA1999' });
    const late = rule(72, { serialFrom: 'QA2000' });
    expect(months([early, late])).toEqual([60]);
    expect(rulesInForce([early, late], { ...known, serial: null }).doubts).toEqual([
      'A limit for serials QA1000 to QA1999 counts, as the serial cannot be compared.',
      'A limit for serials QA2000 to the last counts, as the serial cannot be compared.',
    ]);
  });

  it('is that of its application, and within it that of its use', () => {
    const own = { applicationId: 'a' };
    const all = [...byUse, rule(50, own), rule(40, { ...own, useCategory: 'acrobatic' })];
    expect(months(all, { use: 'agricultural' })).toEqual([50]);
    expect(months(all, { use: 'acrobatic' })).toEqual([40]);
    expect(months(all, { use: null })).toEqual([50, 40]);
  });

  const conditions = fc.record({
    applicationId: fc.constantFrom(null, 'a'),
    ...{ serialFrom: fc.constantFrom(null, 'QA1100'), serialTo: fc.constantFrom(null, 'QA1300') },
    useCategory: fc.constantFrom(null, 'normal', 'acrobatic'),
    ...{ ageFromMonths: fc.constantFrom(null, 60, 120, 180), ageToMonths: fc.constantFrom(null, 200, 240) },
    months: fc.integer({ min: 1, max: 120 }),
  });

  it('is never longer for what is not known than for anything it may turn out to be, within one application', () => {
    const units = fc.record({
      serial: fc.constantFrom('QA1000', 'QA1200', 'QA9000'),
      use: fc.constantFrom('normal', 'acrobatic', 'agricultural'),
      ...{ madeOn: fc.constantFrom('2000-01-01', '2015-06-30', '2024-01-01'), overhauledOn: fc.constant('2025-06-30') },
    });
    const hide = fc.record({ serial: fc.boolean(), use: fc.boolean(), madeOn: fc.boolean() });
    const shortest = (rules: readonly { months: number }[]) => Math.min(Infinity, ...rules.map((one) => one.months));
    fc.assert(
      fc.property(fc.array(conditions, { maxLength: 6 }), units, hide, (rules, unit, hidden) => {
        const general = rules.map((one) => ({ ...one, applicationId: null }));
        const less: TboUnit = {
          ...unit,
          serial: hidden.serial ? null : unit.serial,
          use: hidden.use ? null : unit.use,
          madeOn: hidden.madeOn ? null : unit.madeOn,
        };
        // Rules of one use are left aside where the use is known, so what hides only a serial or an age is compared among those.
        const [whole, part] = [rulesInForce(general, unit).rules, rulesInForce(general, less).rules];
        if (hidden.use || general.every(({ useCategory }) => useCategory === null))
          expect(shortest(part)).toBeLessThanOrEqual(shortest(whole));
      }),
    );
  });
});
