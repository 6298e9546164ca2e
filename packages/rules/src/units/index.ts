import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

export type Unit =
  | 'in'
  | 'mm'
  | 'ft-lb'
  | 'in-lb'
  | 'N-m'
  | 'psi'
  | 'kPa'
  | 'ips'
  | 'mm/s'
  | 'oz'
  | 'g'
  | 'lb'
  | 'kg'
  | 'oz-in'
  | 'g-in'
  | 'g-mm'
  | 'degF'
  | 'degC'
  | 'gal'
  | 'qt'
  | 'L'
  | 'gal/min'
  | 'qt/min'
  | 'qt/h'
  | 'L/min'
  | 'L/h';

type Quantity =
  | 'length'
  | 'torque'
  | 'pressure'
  | 'velocity'
  | 'mass'
  | 'unbalance'
  | 'temperature'
  | 'volume'
  | 'flow';
/** value in the base unit = (value - zero) × factor. */
type Scale = { of: Quantity; factor: Decimal; zero: number };

const Exact = Decimal.clone({ precision: 50 });

// Exact by definition: NIST SP 811 (2008), Appendix B.8 (factors in bold), and 9.80665 m/s² for standard gravity.
const MM_PER_INCH = new Exact('25.4');
const GRAMS_PER_POUND = new Exact('453.59237');
const NEWTONS_PER_POUND_FORCE = new Exact('0.45359237').times('9.80665');
const LITRES_PER_US_GALLON = new Exact('3.785411784'); // 231 cubic inches
const METRES_PER_INCH = MM_PER_INCH.div(1000);

const one = new Exact(1);
const scale = (of: Quantity, factor: Decimal, zero = 0): Scale => ({ of, factor, zero });
const SCALES: Record<Unit, Scale> = {
  in: scale('length', MM_PER_INCH),
  mm: scale('length', one),
  'ft-lb': scale('torque', NEWTONS_PER_POUND_FORCE.times(METRES_PER_INCH).times(12)),
  'in-lb': scale('torque', NEWTONS_PER_POUND_FORCE.times(METRES_PER_INCH)),
  'N-m': scale('torque', one),
  psi: scale('pressure', NEWTONS_PER_POUND_FORCE.div(METRES_PER_INCH.pow(2)).div(1000)),
  kPa: scale('pressure', one),
  ips: scale('velocity', MM_PER_INCH),
  'mm/s': scale('velocity', one),
  oz: scale('mass', GRAMS_PER_POUND.div(16)),
  g: scale('mass', one),
  lb: scale('mass', GRAMS_PER_POUND),
  kg: scale('mass', new Exact(1000)),
  'oz-in': scale('unbalance', GRAMS_PER_POUND.div(16).times(MM_PER_INCH)),
  'g-in': scale('unbalance', MM_PER_INCH),
  'g-mm': scale('unbalance', one),
  degF: scale('temperature', new Exact(5).div(9), 32),
  degC: scale('temperature', one),
  gal: scale('volume', LITRES_PER_US_GALLON),
  qt: scale('volume', LITRES_PER_US_GALLON.div(4)),
  L: scale('volume', one),
  'gal/min': scale('flow', LITRES_PER_US_GALLON),
  'qt/min': scale('flow', LITRES_PER_US_GALLON.div(4)),
  'qt/h': scale('flow', LITRES_PER_US_GALLON.div(240)),
  'L/min': scale('flow', one),
  'L/h': scale('flow', one.div(60)),
};

/**
 * A value in another unit, computed in decimal and rounded once to the nearest number.
 *
 * `ft-lb` and `in-lb` are torques (pound-force), `oz-in`, `g-in` and `g-mm` unbalance (mass times radius), `gal` and `qt` the US gallon and
 * liquid quart.
 * `ips` and `mm/s` convert the figure as it stands: peak stays peak, rms stays rms. Temperatures are readings on the scale; for a
 * tolerance in degrees use {@link convertDifference}.
 *
 * Source: NIST SP 811 (2008), Appendix B; temperature by B.8 (°C = (°F − 32) / 1.8).
 * Errors: RuleError `not-a-number`, `unknown-unit`, `units-differ`, `out-of-range`.
 *
 * @example convert(1, 'in', 'mm') // 25.4
 * convert(350, 'degF', 'degC') // 176.66666666666666
 */
export function convert(value: number, from: Unit, to: Unit): number {
  const { number, source, target } = checked(value, from, to);
  if (from === to) return rounded(number);
  return rounded(number.minus(source.zero).times(source.factor).div(target.factor).plus(target.zero));
}

/**
 * A difference (a tolerance, a rise) in another unit: as {@link convert}, but the zero points of temperature scales do not count.
 *
 * Source and errors: as {@link convert}.
 *
 * @example convertDifference(25, 'degF', 'degC') // 13.88888888888889
 */
export function convertDifference(value: number, from: Unit, to: Unit): number {
  const { number, source, target } = checked(value, from, to);
  return rounded(number.times(source.factor).div(target.factor));
}

function checked(value: number, from: Unit, to: Unit): { number: Decimal; source: Scale; target: Scale } {
  if (!Number.isFinite(value)) throw new RuleError('not-a-number', 'Only finite numbers convert.', 'value');
  const [source, target] = [scaleOf(from, 'from'), scaleOf(to, 'to')];
  if (source.of !== target.of)
    throw new RuleError('units-differ', `${from} measures ${source.of}, ${to} measures ${target.of}.`, 'to');
  return { number: new Exact(value), source, target };
}

function scaleOf(unit: Unit, path: string): Scale {
  if (!Object.hasOwn(SCALES, unit))
    throw new RuleError('unknown-unit', `"${String(unit)}" is no unit known here.`, path);
  return SCALES[unit];
}

function rounded(value: Decimal): number {
  const result = value.toNumber();
  if (!Number.isFinite(result)) throw new RuleError('out-of-range', 'The converted value is too large.', 'value');
  return result === 0 ? 0 : result;
}
