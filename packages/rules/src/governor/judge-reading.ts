import { RuleError } from '../errors/index.ts';
import { implausible, judge, type Limit } from '../limits/index.ts';
import { convert, type Unit } from '../units/index.ts';

/** Units a bench reads in. Turns a minute and seconds have no other unit here. */
export const benchUnits = [
  'rpm',
  'psi',
  'kPa',
  'qt/min',
  'gal/min',
  'L/min',
  'qt/h',
  'L/h',
  'degF',
  'degC',
  'in',
  'mm',
  'in-lb',
  'N-m',
  's',
] as const;
export type BenchUnit = (typeof benchUnits)[number];

/** What a point asks for: inclusive limits in its unit, see {@link Limit}. */
export type PointLimit = Limit & { readonly unit: BenchUnit };
export interface JudgedReading {
  /** In the unit of the point. */
  readonly value: number;
  readonly compared: number;
  readonly pass: boolean;
  readonly margin: number;
}

/**
 * A reading in another unit of the same quantity, rounded to the nearest number.
 *
 * Errors: RuleError `units-differ`: pressure is no flow; `not-a-number`.
 *
 * @example inUnit(2000, 'kPa', 'psi') // 290.07547546041724
 */
export function inUnit(value: number, from: BenchUnit, to: BenchUnit): number {
  if (!Number.isFinite(value)) throw new RuleError('not-a-number', 'A reading is a finite number.', 'value');
  if (from === to) return value;
  const lone = [from, to].some((unit) => unit === 'rpm' || unit === 's');
  if (lone) throw new RuleError('units-differ', `${from} and ${to} measure different things.`, 'unit');
  try {
    return convert(value, from as Unit, to as Unit);
  } catch (error) {
    if (error instanceof RuleError && error.code === 'units-differ')
      throw new RuleError('units-differ', error.message, 'unit');
    throw error;
  }
}

/** Units of the same quantity: what a gauge may read in where `unit` is asked for. */
export function unitsBeside(unit: BenchUnit): readonly BenchUnit[] {
  return benchUnits.filter((other) => {
    if (other === unit) return true;
    try {
      inUnit(1, other, unit);
      return true;
    } catch {
      return false;
    }
  });
}

/**
 * A reading as it was taken, brought into the point's unit and judged by the rule of {@link judge}. Refused instead of judged:
 * what cannot be a reading of this point (`reading-impossible`, by {@link implausible}), and what is outside as it was read but
 * inside if the gauge shows another unit (`unit-doubtful`), unless `unitChecked` says that somebody looked at the gauge again.
 * `printed` are the manual's own limits where those to judge by are narrowed: a good zero stays a reading.
 *
 * Source: common practice, no source; conversions as {@link convert}. Further errors as {@link inUnit} and {@link judge}.
 *
 * @example judgeReading({ value: 1965, unit: 'psi' }, { low: 275, high: 295, decimals: 0, method: 'absolute', unit: 'psi' })
 * // RuleError unit-doubtful: 1965 kPa would be inside
 */
export function judgeReading(
  taken: { readonly value: number; readonly unit: BenchUnit; readonly unitChecked?: boolean | undefined },
  { unit, ...limit }: PointLimit,
  printed: { readonly low?: number | undefined; readonly high?: number | undefined } = limit,
): JudgedReading {
  const value = inUnit(taken.value, taken.unit, unit);
  const judged = judge(value, limit);
  const other = judged.pass || taken.unitChecked ? undefined : swappedFor(taken, { ...limit, unit });
  if (other !== undefined)
    throw new RuleError(
      'unit-doubtful',
      `${taken.value} ${taken.unit} is outside the limits and ${taken.value} ${other} inside: look at the unit of the gauge.`,
      'unit',
    );
  const why = implausible(value, printed);
  if (why) throw new RuleError('reading-impossible', `${taken.value} ${taken.unit} is ${why}`, 'value');
  return { value, ...judged };
}

/** The other unit in which this number would be inside. */
function swappedFor(taken: { readonly value: number; readonly unit: BenchUnit }, { unit, ...limit }: PointLimit) {
  return unitsBeside(unit).find((other) => other !== taken.unit && judge(inUnit(taken.value, other, unit), limit).pass);
}

/**
 * Whether oil is at the temperature of the test: a sentence why not, or undefined. Band inclusive.
 *
 * Source: common practice, no source. Errors as {@link inUnit}.
 *
 * @example oilComplaint({ value: 70, unit: 'degF' }, { low: 150, high: 180, unit: 'degF' })
 * // '70 degF is below 150 to 180 degF; 70 degC would be inside: look at the unit'
 */
export function oilComplaint(
  read: { readonly value: number; readonly unit: BenchUnit },
  band: { readonly low: number; readonly high: number; readonly unit: BenchUnit },
): string | undefined {
  const isIn = (value: number) => value >= band.low && value <= band.high;
  const value = inUnit(read.value, read.unit, band.unit);
  if (isIn(value)) return undefined;
  const other = unitsBeside(band.unit).find((unit) => unit !== read.unit && isIn(inUnit(read.value, unit, band.unit)));
  const where = value < band.low ? 'below' : 'above';
  const doubt = other ? `; ${read.value} ${other} would be inside: look at the unit` : '';
  return `${read.value} ${read.unit} is ${where} ${band.low} to ${band.high} ${band.unit}${doubt}`;
}
