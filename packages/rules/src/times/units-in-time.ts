import { checkTimesInput, type Installation, type Reading, type Tenths, type TimesInput } from './times-input.ts';

/** `atLeastTenths` is what is known to have been flown; equal to `tenths` where that is known. */
export type Time = { tenths: Tenths; atLeastTenths: number };

export type UnitTimes = {
  sinceNew: Time;
  sinceOverhaul: Time;
  /** Time is counted up to this day: the last reading of the aircraft it flies on, or asOf when it is off the wing. */
  countedThrough: string;
};

/**
 * A unit's time since new and since overhaul on a day, from where it was installed and what the meters showed.
 *
 * Intervals add up; a sum with an unknown part is unknown, with what is known as the lower bound. Only an overhaul
 * restarts the time since overhaul; time since new never restarts, and one may be unknown while the other is known.
 * Time stops at the last reading on or before asOf: nothing is projected. Readings need not be in order.
 *
 * Whole tenths of an hour. Source: 14 CFR 1.1 (time in service) and 91.417(a)(2) (total time and time since overhaul are
 * kept); that only an overhaul restarts it is common practice, no source.
 *
 * @throws RuleError not-a-date, not-tenths, before-history, half-a-removal, ends-before-it-begins, in-two-places,
 *   overhauled-while-installed, meter-runs-backwards
 * @example overhauled and installed at 1234.5 on the meter, now 1630.2: since overhaul 3957 tenths
 */
export function unitsInTime(input: TimesInput): UnitTimes {
  checkTimesInput(input);
  const { asOf, carried } = input;
  const flown = input.installations
    .filter(({ from }) => from <= asOf)
    .map((installation) => ({ from: installation.from, ...flownIn(installation, input) }));
  const overhaul = input.overhauls
    .filter((date) => date <= asOf)
    .sort()
    .at(-1);
  const since = overhaul === undefined ? flown : flown.filter(({ from }) => from >= overhaul);
  const startTenths = overhaul === undefined ? carried.sinceOverhaulTenths : 0;
  return {
    sinceNew: total(carried.sinceNewTenths, flown),
    sinceOverhaul: total(startTenths, since),
    countedThrough: flown.find(({ through }) => through !== undefined)?.through ?? asOf,
  };
}

function total(start: Tenths, parts: Time[]): Time {
  const all: Time[] = [{ tenths: start, atLeastTenths: start === 'unknown' ? 0 : start }, ...parts];
  const atLeastTenths = all.reduce((sum, part) => sum + part.atLeastTenths, 0);
  return { tenths: all.some(({ tenths }) => tenths === 'unknown') ? 'unknown' : atLeastTenths, atLeastTenths };
}

/** `through`: for a unit still flying on asOf, the day of the last reading counted. */
function flownIn(installation: Installation, { asOf, readings }: TimesInput): Time & { through: string | undefined } {
  const { from, fromTenths, to, toTenths } = installation;
  const closed = to !== undefined && to <= asOf;
  const own = readingsOf(installation, readings, asOf);
  const first = fromTenths === 'unknown' ? own[0]?.tenths : fromTenths;
  const last = closed && typeof toTenths === 'number' ? toTenths : own.at(-1)?.tenths;
  const atLeastTenths = first === undefined || last === undefined ? 0 : Math.max(0, last - first);
  const unknown = fromTenths === 'unknown' || (closed && toTenths === 'unknown');
  const through = closed ? undefined : (own.at(-1)?.date ?? from);
  return { tenths: unknown ? 'unknown' : atLeastTenths, atLeastTenths, through };
}

/**
 * Readings that are surely this unit's flying. On the day of removal, or of an installation at an unknown figure, the
 * aircraft may have flown with another unit too, so that day's readings are left out.
 */
function readingsOf({ meter, from, fromTenths, to }: Installation, readings: Reading[], asOf: string): Reading[] {
  return readings
    .filter((reading) => reading.meter === meter && reading.date <= asOf)
    .filter(({ date, tenths }) => (fromTenths === 'unknown' ? date > from : date >= from && tenths >= fromTenths))
    .filter(({ date }) => to === undefined || date < to)
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.tenths - b.tenths));
}
