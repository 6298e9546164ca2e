import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { choose, countTolerance, type LotFacts, misfit, type Need } from './index.ts';

const lot = (given: Partial<LotFacts> = {}): LotFacts => ({
  id: 'lot',
  part: 'SEAL',
  state: 'accepted',
  hasCertificate: true,
  certificateRequired: true,
  minimumDaysAtBuild: 0,
  source: 'maker-new',
  free: 10,
  ...given,
});
const need = (given: Partial<Need> = {}): Need => ({
  parts: ['SEAL', 'SEAL-B'],
  quantity: 3,
  today: '2026-03-01',
  buildOn: '2026-03-10',
  acceptedSources: ['maker-new'],
  owner: 'customer',
  ...given,
});

describe('whether a lot may be used', () => {
  it.each([
    ['another part', { part: 'NUT' }, 'wrong-part'],
    ['an alternate', { part: 'SEAL-B' }, undefined],
    ['in quarantine', { state: 'quarantine' as const }, 'not-accepted'],
    ['rejected', { state: 'rejected' as const }, 'not-accepted'],
    ['without a certificate', { hasCertificate: false }, 'no-certificate'],
    ['without a certificate where none is required', { hasCertificate: false, certificateRequired: false }, undefined],
    ['expiring today', { expires: '2026-03-01' }, 'expired'],
    ['expiring on the day of the build', { expires: '2026-03-10' }, 'short-life'],
    ['expiring the day after the build', { expires: '2026-03-11' }, undefined],
    ['with nine of ten days left at build', { expires: '2026-03-19', minimumDaysAtBuild: 10 }, 'short-life'],
    ['with ten of ten days left at build', { expires: '2026-03-20', minimumDaysAtBuild: 10 }, undefined],
    ['of a source the customer does not take', { source: 'used-serviceable' }, 'source-not-accepted'],
    ['of another customer', { owner: 'other' }, 'other-owner'],
    ['of this customer', { owner: 'customer' }, undefined],
  ])('%s', (_, given, expected) => {
    expect(misfit(lot(given), need())).toBe(expected);
  });

  it('counts from today when the day of the build has passed', () => {
    expect(misfit(lot({ expires: '2026-03-02' }), need({ buildOn: '2026-01-01' }))).toBeUndefined();
  });

  it('refuses a day that is none', () => {
    expect(() => misfit(lot({ expires: '2026-02-30' }), need())).toThrow(
      expect.objectContaining({ code: 'not-a-date' }),
    );
  });
});

describe('choosing lots', () => {
  it('takes its own part before alternates and the earliest expiry first', () => {
    const lots = [
      lot({ id: 'b', part: 'SEAL-B', expires: '2026-04-01', free: 9 }),
      lot({ id: 'ageless', free: 1 }),
      lot({ id: 'late', expires: '2027-01-01', free: 1 }),
      lot({ id: 'soon', expires: '2026-06-01', free: 2 }),
      lot({ id: 'expired', expires: '2026-02-01', free: 9 }),
    ];
    expect(choose(need({ quantity: 6 }), lots)).toEqual({
      picks: [
        { lot: 'soon', quantity: 2 },
        { lot: 'late', quantity: 1 },
        { lot: 'ageless', quantity: 1 },
        { lot: 'b', quantity: 2 },
      ],
      left: 0,
      passedOver: [{ lot: 'expired', reason: 'expired' }],
    });
  });

  it('never promises more than is free or needed, and leaves nothing free while something is left to find', () => {
    const lots = fc.array(
      fc.record({
        id: fc.uuid(),
        part: fc.constantFrom('SEAL', 'SEAL-B', 'NUT'),
        free: fc.nat(20),
        state: fc.constantFrom('accepted' as const, 'quarantine' as const),
        expires: fc.constantFrom(undefined, '2026-02-01', '2026-05-01', '2027-01-01'),
      }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(lots, fc.nat(60), (given, quantity) => {
        const all = given.map((each) => lot(each));
        const { picks, left } = choose(need({ quantity }), all);
        const picked = new Map(picks.map((pick) => [pick.lot, pick.quantity]));
        expect(picks.reduce((sum, pick) => sum + pick.quantity, left)).toBe(quantity);
        for (const each of all) {
          const taken = picked.get(each.id) ?? 0;
          expect(taken).toBeLessThanOrEqual(each.free);
          const fits = misfit(each, need()) === undefined;
          if (!fits) expect(taken).toBe(0);
          if (fits && left > 0) expect(taken).toBe(each.free);
        }
      }),
    );
  });

  it('refuses half pieces', () => {
    expect(() => choose(need({ quantity: 1.5 }), [])).toThrow(expect.objectContaining({ code: 'not-a-quantity' }));
  });
});

it('lets the parts room write off one piece of few and two in a hundred of many', () => {
  expect([0, 1, 99, 100, 1000].map((onBook) => countTolerance(onBook))).toEqual([1, 1, 1, 2, 20]);
});
