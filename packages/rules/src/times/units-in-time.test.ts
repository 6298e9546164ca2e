import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../dates/index.ts';
import { type TimesInput, unitsInTime } from './index.ts';

const fresh = { date: '2025-01-01', sinceNewTenths: 0, sinceOverhaulTenths: 0 };
const base: TimesInput = { asOf: '2026-01-01', carried: fresh, overhauls: [], installations: [], readings: [] };
const times = (change: Partial<TimesInput>) => unitsInTime({ ...base, ...change });
const onWing = { meter: 'tachometer', from: '2025-03-01', fromTenths: 12_345 };
const reading = (date: string, tenths: number, meter = 'tachometer') => ({ meter, date, tenths });

describe('time since new and since overhaul', () => {
  it('counts from the meter at installation after the overhaul (the worked example)', () => {
    const answer = times({
      carried: { date: '2025-01-01', sinceNewTenths: 'unknown', sinceOverhaulTenths: 'unknown' },
      overhauls: ['2025-02-15'],
      installations: [onWing],
      readings: [reading('2025-12-24', 16_302)],
    });
    expect(answer.sinceOverhaul).toEqual({ tenths: 3957, atLeastTenths: 3957 });
    expect(answer.sinceNew).toEqual({ tenths: 'unknown', atLeastTenths: 3957 });
    expect(answer.countedThrough).toBe('2025-12-24');
  });

  it('adds intervals on several aircraft and meters to what the papers carried', () => {
    const answer = times({
      carried: { date: '2025-01-01', sinceNewTenths: 20_000, sinceOverhaulTenths: 5000 },
      installations: [
        { meter: 'a', from: '2025-02-01', fromTenths: 100, to: '2025-05-01', toTenths: 300 },
        { meter: 'b', from: '2025-06-01', fromTenths: 9000, to: '2025-09-01', toTenths: 9050 },
      ],
    });
    expect(answer).toMatchObject({ sinceNew: { tenths: 20_250 }, sinceOverhaul: { tenths: 5250 } });
    expect(answer.countedThrough).toBe('2026-01-01');
  });

  it('answers for any day in the past, before an overhaul too', () => {
    const history = {
      overhauls: ['2025-08-01'],
      installations: [
        { meter: 'a', from: '2025-02-01', fromTenths: 0, to: '2025-07-01', toTenths: 400 },
        { meter: 'a', from: '2025-09-01', fromTenths: 500 },
      ],
      readings: [reading('2025-05-01', 150, 'a'), reading('2025-12-01', 530, 'a')],
    };
    expect(times({ ...history, asOf: '2025-06-01' }).sinceOverhaul.tenths).toBe(150);
    expect(times({ ...history, asOf: '2025-07-15' }).sinceOverhaul.tenths).toBe(400);
    expect(times({ ...history, asOf: '2025-08-01' })).toMatchObject({
      sinceOverhaul: { tenths: 0 },
      sinceNew: { tenths: 400 },
    });
    expect(times(history)).toMatchObject({ sinceOverhaul: { tenths: 30 }, sinceNew: { tenths: 430 } });
  });

  it('takes a replaced meter as another meter', () => {
    const installations = [
      { meter: 'old', from: '2025-02-01', fromTenths: 13_000, to: '2025-05-01', toTenths: 13_104 },
      { meter: 'new', from: '2025-05-01', fromTenths: 0 },
    ];
    expect(times({ installations, readings: [reading('2025-10-01', 7, 'new')] }).sinceNew.tenths).toBe(111);
  });
});

describe('what nobody knows', () => {
  it('keeps an unknown installation or removal unknown, with what readings prove as the least', () => {
    const readings = [
      reading('2025-03-01', 50),
      reading('2025-04-01', 200),
      reading('2025-06-01', 260),
      reading('2025-07-01', 400),
    ];
    const unknownStart = { ...onWing, fromTenths: 'unknown' as const };
    expect(times({ installations: [unknownStart], readings }).sinceNew).toEqual({
      tenths: 'unknown',
      atLeastTenths: 200,
    });
    const unknownEnd = { ...onWing, fromTenths: 150, to: '2025-07-01', toTenths: 'unknown' as const };
    expect(times({ installations: [unknownEnd], readings }).sinceNew).toEqual({
      tenths: 'unknown',
      atLeastTenths: 110,
    });
  });

  it('is not carried over an overhaul', () => {
    const unknown = { ...onWing, from: '2025-02-01', to: '2025-04-01', fromTenths: 'unknown' as const, toTenths: 90 };
    const answer = times({ installations: [unknown], overhauls: ['2025-05-01'] });
    expect(answer).toMatchObject({ sinceNew: { tenths: 'unknown' }, sinceOverhaul: { tenths: 0 } });
  });
});

describe('bad input', () => {
  it.each([
    ['meter-runs-backwards', 'readings[0].tenths', { installations: [onWing], readings: [reading('2025-05-01', 12)] }],
    ['meter-runs-backwards', 'readings[0].tenths', { readings: [reading('2025-06-01', 1), reading('2025-05-01', 2)] }],
    [
      'meter-runs-backwards',
      'installations[0].toTenths',
      { installations: [{ ...onWing, to: '2025-04-01', toTenths: 1 }] },
    ],
    ['half-a-removal', 'installations[0].toTenths', { installations: [{ ...onWing, to: '2025-04-01' }] }],
    [
      'ends-before-it-begins',
      'installations[0].to',
      { installations: [{ ...onWing, to: '2025-02-01', toTenths: 99_999 }] },
    ],
    ['in-two-places', 'installations[0].from', { installations: [{ ...onWing, from: '2025-06-01' }, onWing] }],
    ['overhauled-while-installed', 'installations[0]', { installations: [onWing], overhauls: ['2025-06-01'] }],
    ['before-history', 'overhauls[0]', { overhauls: ['2024-12-31'] }],
    ['before-history', 'installations[0].from', { installations: [{ ...onWing, from: '2024-12-31' }] }],
    ['before-history', 'asOf', { asOf: '2024-12-31' }],
    ['not-tenths', 'carried.sinceNewTenths', { carried: { ...fresh, sinceNewTenths: 1.5 } }],
    ['not-tenths', 'readings[0].tenths', { readings: [reading('2025-05-01', -1)] }],
    ['not-a-date', 'installations[0].from', { installations: [{ ...onWing, from: '2025-02-30' }] }],
  ])('refuses %s at %s', (code, path, change) => {
    expect(() => times(change)).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
});

/** Flights day by day on one meter; the unit is on from day 10 to day 80, or still on. */
const flying = fc.record({
  perDay: fc.array(fc.nat(40), { minLength: 100, maxLength: 100 }),
  readOn: fc.uniqueArray(fc.integer({ min: 11, max: 79 }), { minLength: 1, maxLength: 8 }),
  stillOn: fc.boolean(),
  splitOn: fc.integer({ min: 11, max: 79 }),
  askedOn: fc.integer({ min: 10, max: 99 }),
});
const day = (n: number) => addDays('2025-01-01', n);

describe('on any history', () => {
  it('totals stay when an interval is split, the unit is taken out and put back, or a reading is added on the line', () => {
    fc.assert(
      fc.property(flying, ({ perDay, readOn, stillOn, splitOn, askedOn }) => {
        const meter = (n: number) => perDay.slice(0, n).reduce((sum, tenths) => sum + tenths, 0);
        const end = stillOn ? {} : { to: day(80), toTenths: meter(80) };
        const readings = [...readOn, splitOn].map((n) => reading(day(n), meter(n), 'm'));
        const whole = [{ meter: 'm', from: day(10), fromTenths: meter(10), ...end }];
        const parts = [
          { meter: 'm', from: day(splitOn), fromTenths: meter(splitOn), ...end },
          { meter: 'm', from: day(10), fromTenths: meter(10), to: day(splitOn), toTenths: meter(splitOn) },
        ];
        const asOf = day(askedOn);
        const before = times({ asOf, installations: whole, readings });
        expect(times({ asOf, installations: parts, readings })).toEqual(before);
        const withoutIt = readOn.filter((n) => n !== splitOn).map((n) => reading(day(n), meter(n), 'm'));
        if (!readOn.some((n) => n > splitOn && n <= askedOn)) return;
        expect(times({ asOf, installations: whole, readings: withoutIt })).toEqual(before);
      }),
    );
  });

  it('time since new never falls as days pass', () => {
    fc.assert(
      fc.property(flying, fc.nat(30), ({ perDay, readOn, askedOn }, later) => {
        const meter = (n: number) => perDay.slice(0, n).reduce((sum, tenths) => sum + tenths, 0);
        const installations = [{ meter: 'm', from: day(10), fromTenths: meter(10), to: day(80), toTenths: meter(80) }];
        const readings = readOn.map((n) => reading(day(n), meter(n), 'm'));
        const on = (n: number) => times({ asOf: day(n), installations, readings }).sinceNew.atLeastTenths;
        expect(on(askedOn + later)).toBeGreaterThanOrEqual(on(askedOn));
      }),
    );
  });
});
