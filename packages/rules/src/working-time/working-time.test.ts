import { describe, expect, it } from '@jest/globals';
import { Temporal } from '@js-temporal/polyfill';
import fc from 'fast-check';
import {
  addWorkingMinutes,
  awayBackwards,
  awayOverlaps,
  minutesAWeek,
  type PersonCalendar,
  type Shift,
  type Week,
  weekFaults,
  workDay,
  workingMinutes,
} from './index.ts';

const early: Shift = { from: '06:00', to: '14:30', breaks: [{ from: '10:00', to: '10:30' }] };
const late: Shift = { from: '14:00', to: '22:30', breaks: [{ from: '18:00', to: '18:30' }] };
const night: Shift = { from: '22:00', to: '06:00', breaks: [{ from: '01:30', to: '02:00' }] };
const weekOf = (shift: Shift): Week => [[shift], [shift], [shift], [shift], [shift], [], []];
const zone = 'America/Chicago';
const calendar = (week: Week, more: Partial<PersonCalendar> = {}): PersonCalendar => ({
  ...{ zone, weeks: [{ validFrom: '2025-01-01', week }], holidays: [], absences: [] },
  ...more,
});

describe('a working day', () => {
  it('is the shift without its break', () => {
    expect(workDay(calendar(weekOf(early)), '2026-03-02')).toMatchObject({
      plannedMinutes: 480,
      availableMinutes: 480,
    });
    expect(workDay(calendar(weekOf(early)), '2026-03-01')).toMatchObject({ plannedMinutes: 0, periods: [] });
  });

  it('is an hour shorter for the night on which the clocks go forward, and an hour longer when they go back', () => {
    const everyNight = calendar([[night], [night], [night], [night], [night], [night], [night]]);
    // Chicago: 8 March and 1 November 2026 (US rule: second Sunday of March, first of November).
    expect(workDay(everyNight, '2026-03-06').availableMinutes).toBe(450);
    // 22:00–01:30 and from 03:00 (02:00 does not exist, the hour after it does) to 06:00.
    expect(workDay(everyNight, '2026-03-07').availableMinutes).toBe(390);
    expect(workDay(everyNight, '2026-10-31').availableMinutes).toBe(510);
  });

  it('loses its whole on a holiday and half of its minutes on half a one, also on a late shift', () => {
    const holidays = [
      { on: '2026-03-02', part: 'whole' as const },
      { on: '2026-03-03', part: 'morning' as const },
    ];
    const day = (date: string) => workDay(calendar(weekOf(late), { holidays }), date);
    expect(day('2026-03-02')).toMatchObject({ plannedMinutes: 480, availableMinutes: 0 });
    // Half of 480 minutes from 14:00 with the break from 18:00: the afternoon begins at 18:00, works from 18:30.
    expect(day('2026-03-03').periods.map(({ start }) => new Date(start).toISOString())).toEqual([
      '2026-03-04T00:30:00.000Z',
    ]);
    expect(day('2026-03-03').availableMinutes).toBe(240);
  });

  it('follows the week that holds on it, and nothing before the first', () => {
    const weeks = [
      { validFrom: '2026-03-04', week: weekOf(late) },
      { validFrom: '2026-03-02', week: weekOf(early) },
    ];
    const start = (date: string) => workDay(calendar([], { weeks }), date).periods[0]?.start;
    expect(start('2026-02-27')).toBeUndefined();
    expect(start('2026-03-03')).toBe(Date.parse('2026-03-03T12:00:00Z'));
    expect(start('2026-03-04')).toBe(Date.parse('2026-03-04T20:00:00Z'));
  });
});

describe('a week of shifts', () => {
  const week = (monday: readonly Shift[], sunday: readonly Shift[] = []): Week => [monday, [], [], [], [], [], sunday];
  it('names shifts that overlap, also over midnight from Sunday, and breaks outside them', () => {
    expect(weekFaults(week([early]))).toEqual([]);
    expect(weekFaults(week([early, late]))).toEqual([{ path: '0/1', detail: 'Two shifts overlap' }]);
    expect(weekFaults(week([{ from: '05:30', to: '09:00', breaks: [] }], [night]))).toEqual([
      { path: '6/0', detail: 'Two shifts overlap' },
    ]);
    const lunch = { from: '15:00', to: '15:30' };
    expect(weekFaults(week([{ ...early, breaks: [lunch] }]))[0]?.detail).toBe('A break lies outside its shift');
    const twice = [
      { from: '10:00', to: '10:30' },
      { from: '10:15', to: '10:45' },
    ];
    expect(weekFaults(week([{ ...early, breaks: twice }]))[0]?.detail).toBe('Two breaks overlap');
    const always = [{ from: '06:00', to: '14:30' }];
    expect(weekFaults(week([{ ...early, breaks: always }]))[0]?.detail).toBe('The breaks take the whole shift');
    expect(weekFaults(week([]))).toHaveLength(1);
  });
  it('takes a break past midnight, and adds up', () => {
    expect(weekFaults(week([night]))).toEqual([]);
    expect(minutesAWeek(weekOf(night))).toBe(5 * 450);
  });
  it('refuses what is no time', () => {
    expect(() => weekFaults(week([{ from: '24:00', to: '06:00', breaks: [] }]))).toThrow(/HH:MM/);
  });
});

describe('half days away', () => {
  const away = (from: string, fromHalf: 'morning' | 'afternoon', to: string, toHalf: 'morning' | 'afternoon') => ({
    from,
    fromHalf,
    to,
    toHalf,
  });
  it('meet only where they share a half', () => {
    const morning = away('2026-03-02', 'morning', '2026-03-02', 'morning');
    expect(awayOverlaps(morning, away('2026-03-02', 'afternoon', '2026-03-04', 'afternoon'))).toBe(false);
    expect(awayOverlaps(morning, away('2026-02-27', 'afternoon', '2026-03-02', 'morning'))).toBe(true);
    expect(awayBackwards(away('2026-03-02', 'afternoon', '2026-03-02', 'morning'))).toBe(true);
  });
});

// The oracle counts minute by minute on the wall clock that another library (the Temporal polyfill) reads.
const zones = ['America/Chicago', 'Europe/Berlin', 'Australia/Lord_Howe', 'UTC', 'Asia/Kolkata'];
const shifts = fc.constantFrom(early, late, { from: '07:15', to: '11:45', breaks: [] });
const scenes = fc.record({
  zone: fc.constantFrom(...zones),
  days: fc.array(fc.option(shifts, { nil: undefined }), { minLength: 7, maxLength: 7 }),
  holidays: fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 2 }),
  away: fc.option(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 3 })), { nil: undefined }),
  // Around the changes of the clocks of 2026 in each of these zones.
  monday: fc.constantFrom('2026-03-02', '2026-03-23', '2026-03-30', '2026-09-28', '2026-10-19', '2026-10-26'),
  from: fc.integer({ min: 0, max: 9 * 1440 }),
  length: fc.integer({ min: 0, max: 3 * 1440 }),
});
type Scene = typeof scenes extends fc.Arbitrary<infer T> ? T : never;

const dateAfter = (date: string, days: number) => Temporal.PlainDate.from(date).add({ days }).toString();

function sceneOf({ zone: place, days, holidays, away, monday, from, length }: Scene) {
  const week = days.map((shift) => (shift ? [shift] : []));
  const person: PersonCalendar = {
    zone: place,
    weeks: [{ validFrom: '2025-01-01', week }],
    holidays: [...new Set(holidays)].map((day) => ({ on: dateAfter(monday, day), part: 'whole' as const })),
    absences: away
      ? [
          {
            ...{ from: dateAfter(monday, away[0]), fromHalf: 'morning' as const },
            ...{ to: dateAfter(monday, away[0] + away[1]), toHalf: 'afternoon' as const },
          },
        ]
      : [],
  };
  const start = Temporal.PlainDate.from(monday).toZonedDateTime(place).epochMilliseconds + from * 60_000;
  const iso = (at: number) => new Date(at).toISOString();
  return { person, from: iso(start), to: iso(start + length * 60_000), start, length };
}

function worksAt(person: PersonCalendar, at: number): boolean {
  const here = Temporal.Instant.fromEpochMilliseconds(at).toZonedDateTimeISO(person.zone);
  const date = here.toPlainDate().toString();
  if (person.holidays.some(({ on }) => on === date)) return false;
  if (person.absences.some(({ from, to }) => from <= date && date <= to)) return false;
  const clock = here.toPlainTime().toString().slice(0, 5);
  const inside = ({ from, to }: { from: string; to: string }) => from <= clock && clock < to;
  return (person.weeks[0]?.week[here.dayOfWeek - 1] ?? []).some((shift) => inside(shift) && !shift.breaks.some(inside));
}

describe('working time between two instants', () => {
  it('is what counting every minute on the wall clock gives', () => {
    fc.assert(
      fc.property(scenes, (given) => {
        const { person, from, to, start, length } = sceneOf(given);
        let counted = 0;
        for (let minute = 0; minute < length; minute += 1) if (worksAt(person, start + minute * 60_000)) counted += 1;
        expect(workingMinutes(person, from, to)).toBe(counted);
      }),
      { numRuns: 25 },
    );
  });

  it('adds up over any instant between', () => {
    fc.assert(
      fc.property(scenes, fc.double({ min: 0, max: 1, noNaN: true }), (given, share) => {
        const { person, from, to, start, length } = sceneOf(given);
        const between = new Date(start + Math.floor(share * length) * 60_000).toISOString();
        expect(workingMinutes(person, from, between) + workingMinutes(person, between, to)).toBe(
          workingMinutes(person, from, to),
        );
      }),
    );
  });

  it('is undone by adding it: the instant reached is the first by which so much was worked', () => {
    const working = scenes.filter(({ days }) => days.some((shift) => shift !== undefined));
    fc.assert(
      fc.property(working, fc.integer({ min: 1, max: 3000 }), (given, minutes) => {
        const { person, from, start } = sceneOf(given);
        const reached = addWorkingMinutes(person, from, minutes);
        expect(workingMinutes(person, from, reached)).toBe(minutes);
        const justBefore = new Date(Date.parse(reached) - 60_000).toISOString();
        if (Date.parse(justBefore) >= start) expect(workingMinutes(person, from, justBefore)).toBe(minutes - 1);
      }),
    );
  });

  it('says so when nothing is ever worked, when the span is backwards, and when the zone or an instant is none', () => {
    const never = calendar([[], [], [], [], [], [], []]);
    expect(() => addWorkingMinutes(never, '2026-03-02T12:00:00Z', 1)).toThrow(/ten years/);
    expect(addWorkingMinutes(never, '2026-03-02T12:00:00Z', 0)).toBe('2026-03-02T12:00:00.000Z');
    const at = '2026-03-02T12:00:00Z';
    expect(() => workingMinutes(calendar(weekOf(early)), at, '2026-03-02T11:59:00Z')).toThrow(/before the beginning/);
    expect(() => workingMinutes(calendar(weekOf(early)), '2026-03-02', at)).toThrow(/ISO text/);
    expect(() => workingMinutes(calendar(weekOf(early), { zone: 'Nowhere/Here' }), at, at)).toThrow(/zone/);
    expect(() => addWorkingMinutes(never, at, 0.5)).toThrow(/whole number/);
  });
});
