import { isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/**
 * Whole counts, so that sums are exact: tenths of an hour on an hour meter, landings or starts one by one on a meter of cycles. One
 * history holds one measure and never adds the two. 'unknown' is not 0.
 */
export type Tenths = number | 'unknown';

export type Installation = {
  /** Which meter the figures are from. A replaced meter is another meter: end the interval and begin one on the new. */
  meter: string;
  from: string;
  fromTenths: Tenths;
  to?: string | undefined;
  /** Needed with `to`; 'unknown' where nobody wrote it down. */
  toTenths?: Tenths | undefined;
};

export type Reading = { meter: string; date: string; tenths: number };

export type TimesInput = {
  asOf: string;
  /** What its papers say on the day its history with us begins. A new unit carries 0 and 0. */
  carried: { date: string; sinceNewTenths: Tenths; sinceOverhaulTenths: Tenths };
  /** Days on which an overhaul was approved; only these restart the time since overhaul. */
  overhauls: string[];
  installations: Installation[];
  readings: Reading[];
};

export function checkTimesInput(input: TimesInput): void {
  const { carried } = input;
  checkDate(input.asOf, 'asOf');
  checkDate(carried.date, 'carried.date');
  checkTenths(carried.sinceNewTenths, 'carried.sinceNewTenths');
  checkTenths(carried.sinceOverhaulTenths, 'carried.sinceOverhaulTenths');
  if (input.asOf < carried.date) throw new RuleError('before-history', 'The history begins later.', 'asOf');
  input.overhauls.forEach((date, i) => {
    checkDate(date, `overhauls[${i}]`);
    if (date < carried.date) throw new RuleError('before-history', 'Carried times hold it already.', `overhauls[${i}]`);
  });
  input.installations.forEach((installation, i) => {
    checkInstallation(installation, `installations[${i}]`, input);
  });
  checkOverlaps(input.installations);
  checkReadings(input.readings);
  input.installations.forEach((installation) => {
    checkAgainst(installation, input.readings);
  });
}

function checkInstallation(installation: Installation, path: string, { carried, overhauls }: TimesInput): void {
  const { from, fromTenths, to, toTenths } = installation;
  checkDate(from, `${path}.from`);
  checkTenths(fromTenths, `${path}.fromTenths`);
  if (from < carried.date) throw new RuleError('before-history', 'Carried times hold it already.', `${path}.from`);
  if ((to === undefined) !== (toTenths === undefined)) {
    throw new RuleError('half-a-removal', 'A removal has a day and a meter reading, or "unknown".', `${path}.toTenths`);
  }
  if (overhauls.some((date) => from < date && (to === undefined || date < to))) {
    throw new RuleError('overhauled-while-installed', 'It was installed on the day of its overhaul.', path);
  }
  if (to === undefined || toTenths === undefined) return;
  checkDate(to, `${path}.to`);
  checkTenths(toTenths, `${path}.toTenths`);
  if (to < from) throw new RuleError('ends-before-it-begins', 'Removed before it was installed.', `${path}.to`);
  if (fromTenths === 'unknown' || toTenths === 'unknown' || toTenths >= fromTenths) return;
  throw new RuleError('meter-runs-backwards', 'Removed at less than it was installed at.', `${path}.toTenths`);
}

function checkOverlaps(installations: Installation[]): void {
  const order = [...installations.keys()].sort((a, b) => {
    const [x, y] = [installations[a]!, installations[b]!];
    return x.from < y.from ? -1 : x.from > y.from ? 1 : (x.to ?? '~') < (y.to ?? '~') ? -1 : 1;
  });
  order.slice(1).forEach((index, i) => {
    const before = installations[order[i]!]!;
    if (before.to !== undefined && before.to <= installations[index]!.from) return;
    throw new RuleError(
      'in-two-places',
      'It is still installed elsewhere on that day.',
      `installations[${index}].from`,
    );
  });
}

function checkReadings(readings: Reading[]): void {
  const highest = new Map<string, Reading>();
  const inOrder = readings.map((reading, i) => ({ reading, path: `readings[${i}]` }));
  for (const { reading, path } of inOrder) {
    checkDate(reading.date, `${path}.date`);
    if (!isTenths(reading.tenths)) throw new RuleError('not-tenths', 'A reading is whole tenths.', `${path}.tenths`);
  }
  inOrder.sort((a, b) => (a.reading.date < b.reading.date ? -1 : a.reading.date > b.reading.date ? 1 : 0));
  for (const { reading, path } of inOrder) {
    const before = highest.get(reading.meter);
    if (before !== undefined && before.tenths > reading.tenths && before.date < reading.date) {
      throw new RuleError('meter-runs-backwards', `Below the reading of ${before.date}.`, `${path}.tenths`);
    }
    if (before === undefined || reading.tenths > before.tenths) highest.set(reading.meter, reading);
  }
}

/** Between the days of installation and removal the meter lies between their figures; on those days anything goes. */
function checkAgainst({ meter, from, fromTenths, to, toTenths }: Installation, readings: Reading[]): void {
  readings.forEach((reading, i) => {
    if (reading.meter !== meter || reading.date <= from || (to !== undefined && reading.date >= to)) return;
    const low = typeof fromTenths === 'number' && reading.tenths < fromTenths;
    const high = typeof toTenths === 'number' && reading.tenths > toTenths;
    if (!low && !high) return;
    const message = low ? 'Below the meter at installation.' : 'Above the meter at removal.';
    throw new RuleError('meter-runs-backwards', message, `readings[${i}].tenths`);
  });
}

function isTenths(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0;
}

function checkTenths(value: Tenths, path: string): void {
  if (value === 'unknown' || isTenths(value)) return;
  throw new RuleError('not-tenths', 'Hours are whole tenths, 0 or more, or "unknown".', path);
}

function checkDate(date: string, path: string): void {
  if (!isDate(date)) throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', path);
}
