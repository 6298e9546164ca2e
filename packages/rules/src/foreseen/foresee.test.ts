import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { arrivalShares, type ForeseeInput, foresee, partRates, sharesOf, toldRate, wholePieces } from './index.ts';

const line = { scopes: ['overhaul'], per: 'unit' as const, source: 'new' as const };
const base: ForeseeInput = {
  ...{ today: '2026-11-28', months: 6, overdueDays: 180, buildDays: 14, returnRate: 0.7 },
  models: [
    {
      ...{ model: 'M', scope: 'overhaul', bladeCount: 3 },
      list: [
        { id: '1', partId: 'seal', position: 'O-ring', ...line, per: 'blade', quantity: 2 },
        { id: '2', partId: 'spring', position: 'spring', ...line, quantity: 1, source: 'reused' },
        { id: '3', partId: 'late seal', position: 'pilot', ...line, quantity: 1, serialFrom: 'Q500' },
      ],
    },
  ],
  rates: [{ model: 'M', part: 'spring', rate: 0.2, each: 1 }],
  due: [],
  unseen: [],
};
const unit = { unit: 'u', model: 'M', serial: 'Q100', sources: 'maker-new' };
const on = (day: string) => ({ earliest: day, likely: day, latest: day });

describe('when a unit arrives', () => {
  const ahead = { today: '2026-11-28', months: 3, overdueDays: 180 };

  it('is in the one month of a day that is certain', () => {
    expect(arrivalShares(on('2026-12-20'), ahead)).toEqual([0, 1, 0]);
  });

  it('is spread between its early and late days, and a tenth beyond either', () => {
    // By 31 December half, by 30 January nine tenths; the last tenth to 7 February, 7.5 days on; the first from 23.5 November.
    const shares = arrivalShares({ earliest: '2026-12-01', likely: '2026-12-31', latest: '2027-01-30' }, ahead);
    expect(shares[0]).toBeCloseTo(0.1 - 0.4 / 30, 10);
    expect(shares[0]! + shares[1]!).toBeCloseTo(0.5, 10);
    expect(shares[2]).toBeCloseTo(0.4 + 0.4 / 30, 10);
  });

  it('is this month where it is overdue, and never where it is overdue for too long', () => {
    expect(arrivalShares(on('2026-09-01'), ahead)).toEqual([1, 0, 0]);
    expect(arrivalShares(on('2026-05-31'), ahead)).toEqual([0, 0, 0]);
  });

  it('is never more than once', () => {
    const days = fc.array(fc.integer({ min: -400, max: 800 }), { minLength: 3, maxLength: 3 });
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 24 }), (offsets, months) => {
        const [earliest, likely, latest] = [...offsets]
          .sort((a, b) => a - b)
          .map((offset) => new Date(Date.UTC(2026, 10, 28 + offset)).toISOString().slice(0, 10)) as [
          string,
          string,
          string,
        ];
        const shares = arrivalShares({ earliest, likely, latest }, { ...ahead, months });
        expect(shares.every((share) => share >= 0)).toBe(true);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1 + 1e-12);
      }),
    );
  });
});

describe('what units not in work yet are expected to need', () => {
  it('is the mandatory list of each unit due, times how likely it comes, in the month it is due', () => {
    const due = [1, 2].map((n) => ({ ...unit, unit: `u${n}`, ...on('2027-01-10') }));
    const { rows, units } = foresee({ ...base, due });
    expect(rows.find(({ part }) => part === 'seal')).toMatchObject({
      ...{ kind: 'due', month: '2027-01', needBy: '2027-01-29', pieces: 8 },
      quantity: expect.closeTo(2 * 0.7 * 6, 10),
    });
    expect(rows.find(({ part }) => part === 'spring')).toMatchObject({
      kind: 'finding',
      quantity: expect.closeTo(2 * 0.7 * 0.2, 10),
    });
    expect(units).toContainEqual({ part: 'seal', kind: 'due', count: 2 });
  });

  it('leaves out a line of a serial range that does not hold the serial, or that nobody can decide', () => {
    const of = (serial: string | null) =>
      foresee({ ...base, due: [{ ...unit, serial, ...on('2027-01-10') }] }).rows.some(
        ({ part }) => part === 'late seal',
      );
    expect([of('Q100'), of('Q600'), of(null)]).toEqual([false, true, false]);
  });

  it('asks of a unit in the house only what is found beyond its kit, and not what was found already', () => {
    const seen = {
      workOrder: 'w',
      model: 'M',
      sources: 'maker-new',
      needBy: '2026-12-05',
      odds: 0.8,
      asked: [] as string[],
    };
    const { rows } = foresee({ ...base, unseen: [seen] });
    expect(rows).toEqual([
      expect.objectContaining({ part: 'spring', kind: 'finding', needBy: '2026-12-05', month: '2026-12' }),
    ]);
    expect(rows[0]?.quantity).toBeCloseTo(0.16, 10);
    expect(foresee({ ...base, unseen: [{ ...seen, asked: ['spring'] }] }).rows).toEqual([]);
  });

  it('is what its units are told to ask for, one by one, whatever the units', () => {
    const days = fc
      .integer({ min: -200, max: 400 })
      .map((n) => new Date(Date.UTC(2026, 10, 28 + n)).toISOString().slice(0, 10));
    const due = fc.record({
      day: days,
      serial: fc.constantFrom('Q100', 'Q600', null),
      sources: fc.constantFrom('maker-new', 'maker-new+used'),
    });
    const unseen = fc.record({ needBy: days, odds: fc.double({ min: 0.1, max: 1, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(due, { maxLength: 12 }), fc.array(unseen, { maxLength: 4 }), (units, seen) => {
        const input: ForeseeInput = {
          ...base,
          due: units.map(({ day, ...rest }, at) => ({ ...unit, ...rest, unit: String(at), ...on(day) })),
          unseen: seen.map((one, at) => ({
            workOrder: String(at),
            model: 'M',
            sources: 'maker-new',
            asked: [],
            ...one,
          })),
        };
        const { rows } = foresee(input);
        for (const part of ['seal', 'spring', 'late seal']) {
          const told = sharesOf(input, part).reduce((sum, { quantity }) => sum + quantity, 0);
          const mine = rows.filter((row) => row.part === part);
          const planned = mine.reduce((sum, { quantity }) => sum + quantity, 0);
          expect(planned).toBeCloseTo(told, 8);
          expect(Math.abs(mine.reduce((sum, { pieces }) => sum + pieces, 0) - planned)).toBeLessThanOrEqual(0.5 + 1e-6);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('how often a part is found to be needed', () => {
  const record = (part: string, units: number, events: number, partClass = 'mandatory') => ({
    ...{ model: 'M', part, partClass, units, events, pieces: events * 2 },
  });

  it('stays near its class while few units were seen, and is its own where many were', () => {
    const rates = partRates([
      record('a', 400, 40),
      record('b', 400, 44),
      record('c', 400, 36),
      record('new', 2, 2),
      record('d', 400, 160),
    ]);
    const rate = Object.fromEntries(rates.map((one) => [one.part, one.rate]));
    expect(rate.new).toBeLessThan(0.6);
    expect(rate.new).toBeGreaterThan(0.17);
    expect(rate.d).toBeGreaterThan(0.38);
    expect(rates.find(({ part }) => part === 'new')?.each).toBe(2);
    const told = toldRate(rates.find(({ part }) => part === 'new')!);
    expect(told.low).toBeLessThan(told.mean);
    expect(told.high - told.low).toBeGreaterThan(0.3);
  });

  it('is not told of a class of which no unit was ever seen', () => {
    expect(partRates([record('a', 0, 0), record('b', 30, 3, 'seal')]).map(({ part }) => part)).toEqual(['b']);
  });
});

describe('parts of pieces', () => {
  it('become whole ones that add up', () => {
    expect(wholePieces([0.4, 0.4, 0.4, 1.3])).toEqual([0, 1, 0, 2]);
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 5, noNaN: true })), (quantities) => {
        const pieces = wholePieces(quantities);
        const sum = quantities.reduce((total, quantity) => total + quantity, 0);
        expect(pieces.every((each) => each >= 0 && Number.isInteger(each))).toBe(true);
        expect(Math.abs(pieces.reduce((total, each) => total + each, 0) - sum)).toBeLessThanOrEqual(0.5 + 1e-6);
      }),
    );
  });
});
