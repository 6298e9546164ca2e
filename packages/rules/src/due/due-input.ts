import { daysBetween, isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

export type DueLimit = { hours?: number | undefined; months?: number | undefined; endOfMonth?: boolean | undefined };
export type MeterReading = { date: string; hours: number };

export type NextDueInput = {
  /**
   * `hours`: what the aircraft's meter showed when the unit was installed after that overhaul. `installed`: the day of
   * that installation where it is known; readings between the two dates then belong to whatever flew in its place.
   * `flownBefore`: hours since that overhaul which it had already when it was installed there, 0 where not given.
   */
  lastOverhaul: {
    date: string;
    hours: number | 'unknown';
    installed?: string | undefined;
    flownBefore?: number | undefined;
  };
  limits: DueLimit[];
  readings: MeterReading[];
  /** Figures of replaced meters are carried over onto the newest one's line and may lie below zero. */
  carriedOver?: boolean | undefined;
  asOf: string;
  /** What limits, readings and use are counted in: hours where nothing is said. `hours` stands for either then. */
  counts?: 'hours' | 'cycles' | undefined;
  /** In place of the use by the readings: hours a day as somebody supposes, or why there is none to reckon with. */
  use?: { perDay: number } | { why: string } | undefined;
};

/** Longer than any unit lives; keeps a typing mistake from leaving the calendar. */
const MOST_MONTHS = 1200;
/** A cycle takes six minutes at least. Chosen, no source. */
const MOST_A_DAY = { hours: 24, cycles: 240 };

export function checkDueInput(input: NextDueInput): void {
  checkDate(input.asOf, 'asOf');
  checkOverhaul(input);
  if (
    input.use &&
    'perDay' in input.use &&
    !(input.use.perDay > 0 && input.use.perDay <= MOST_A_DAY[input.counts ?? 'hours'])
  )
    throw new RuleError(
      'not-a-use',
      'A day of flying has more than 0 and at most 24 hours, or 240 cycles.',
      'use.perDay',
    );
  if (input.limits.length === 0) throw new RuleError('no-limit', 'At least one limit is needed.', 'limits');
  input.limits.forEach((limit, i) => {
    checkLimit(limit, `limits[${i}]`);
  });
  input.readings.forEach((reading, i) => {
    checkDate(reading.date, `readings[${i}].date`);
    checkHours(reading.hours, { path: `readings[${i}].hours`, carriedOver: input.carriedOver });
    checkOrder(input.readings[i - 1], reading, i);
    checkAgainstInstallation(input.lastOverhaul, reading, `readings[${i}].hours`);
  });
}

function checkOverhaul({ lastOverhaul, carriedOver, asOf }: NextDueInput): void {
  const { date, hours, installed, flownBefore = 0 } = lastOverhaul;
  if (!Number.isFinite(flownBefore))
    throw new RuleError('not-hours', 'Hours flown before are a number.', 'lastOverhaul.flownBefore');
  checkDate(date, 'lastOverhaul.date');
  if (hours !== 'unknown') checkHours(hours, { path: 'lastOverhaul.hours', carriedOver });
  if (daysBetween(date, asOf) < 0) {
    throw new RuleError('before-overhaul', 'What was due before the last overhaul is not asked here.', 'asOf');
  }
  if (installed === undefined) return;
  checkDate(installed, 'lastOverhaul.installed');
  if (daysBetween(date, installed) >= 0 && daysBetween(installed, asOf) >= 0) return;
  throw new RuleError(
    'not-between',
    'Installed between the overhaul and asOf, or not given.',
    'lastOverhaul.installed',
  );
}

function checkLimit({ hours, months }: DueLimit, path: string): void {
  if (hours === undefined && months === undefined) {
    throw new RuleError('empty-limit', 'A limit has hours, months or both.', path);
  }
  if (hours !== undefined && !(Number.isFinite(hours) && hours > 0)) {
    throw new RuleError('not-a-limit', 'A limit in hours is above 0.', `${path}.hours`);
  }
  if (months !== undefined && !(Number.isSafeInteger(months) && months > 0 && months <= MOST_MONTHS)) {
    throw new RuleError('not-a-limit', `A limit in months is a whole number, 1 to ${MOST_MONTHS}.`, `${path}.months`);
  }
}

function checkOrder(before: MeterReading | undefined, reading: MeterReading, i: number): void {
  if (before === undefined) return;
  if (daysBetween(before.date, reading.date) < 0) {
    throw new RuleError('out-of-order', 'Readings are given in the order of their dates.', `readings[${i}].date`);
  }
  if (reading.hours >= before.hours) return;
  throw new RuleError(
    'meter-runs-backwards',
    'Below the reading before: was the meter replaced?',
    `readings[${i}].hours`,
  );
}

function checkAgainstInstallation(
  { date, hours, installed }: NextDueInput['lastOverhaul'],
  reading: MeterReading,
  path: string,
): void {
  if (hours === 'unknown') return;
  const daysAfter = daysBetween(installed ?? date, reading.date);
  if (daysAfter > 0 && reading.hours < hours) {
    throw new RuleError('meter-runs-backwards', 'Below the meter at installation: was the meter replaced?', path);
  }
  if (daysAfter < 0 && reading.hours > hours) {
    throw new RuleError('meter-runs-backwards', 'Above the meter at the later installation: was it replaced?', path);
  }
}

function checkDate(date: string, path: string): void {
  if (!isDate(date)) throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', path);
}

function checkHours(hours: number, { path, carriedOver }: { path: string; carriedOver?: boolean | undefined }): void {
  if (Number.isFinite(hours) && (hours >= 0 || carriedOver)) return;
  throw new RuleError('not-hours', 'Hours are a number, 0 or more.', path);
}
