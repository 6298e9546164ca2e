import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { Exact, readDecimal } from '../reading/index.ts';

/** An adapter on the drive of a wrench. Lengths as decimal text in one unit, measured along the wrench: grip to drive, drive to nut. */
export interface Adapter {
  readonly lever: string;
  readonly length: string;
  /** Which way the nut lies from the drive: away from the grip, or back towards it. */
  readonly effect: 'longer' | 'shorter';
}

/**
 * What the wrench is set to so that the nut gets this torque: T × L / (L ± A). At a right angle, and with no adapter, that is the
 * torque itself. A share of two whole numbers, so that nothing is rounded before it is compared: `torque = setting × over / under`.
 *
 * Source: TM 1-1500-204-23-9 (general aircraft maintenance), figures 8-16 and 8-17; AC 43.13-1B, 7-40h, asks for the correction.
 * Errors: RuleError `bad-adapter` for lengths that are not above zero, or a shorter one that reaches the grip.
 */
export function leverShare(adapter: Adapter | undefined): { over: Decimal; under: Decimal } {
  if (!adapter) return { over: new Exact(1), under: new Exact(1) };
  const lever = readDecimal(adapter.lever, { what: 'The length of the lever', path: 'adapter.lever' });
  const length = readDecimal(adapter.length, { what: 'The length of the adapter', path: 'adapter.length' });
  if (lever.lte(0) || length.lte(0))
    throw new RuleError('bad-adapter', 'Lever and adapter have a length above zero.', 'adapter');
  const over = adapter.effect === 'longer' ? lever.plus(length) : lever.minus(length);
  if (over.lte(0)) throw new RuleError('bad-adapter', 'An adapter that goes back ends before the grip.', 'adapter');
  return { over, under: lever };
}

/**
 * The wrench's setting for a torque at the nut, to the nearest of so many decimals, ties to even.
 *
 * Source and errors: as {@link leverShare}.
 *
 * @example settingFor('300', { lever: '10', length: '4', effect: 'longer' }, 0) // '214'
 */
export function settingFor(torque: string, adapter: Adapter | undefined, decimals: number): string {
  const { over, under } = leverShare(adapter);
  return readDecimal(torque, { what: 'The torque', path: 'torque' })
    .times(under)
    .div(over)
    .toFixed(decimals, Decimal.ROUND_HALF_EVEN);
}

/**
 * What the nut gets from a setting: the other way round.
 *
 * @example torqueAt('60', { lever: '12', length: '2', effect: 'longer' }, 0) // '70'
 */
export function torqueAt(setting: string, adapter: Adapter | undefined, decimals: number): string {
  const { over, under } = leverShare(adapter);
  return readDecimal(setting, { what: 'The setting', path: 'setting' })
    .times(over)
    .div(under)
    .toFixed(decimals, Decimal.ROUND_HALF_EVEN);
}

/**
 * The settings that give a torque within a band, rounded inwards: a value inside as shown is inside. Decimals are added
 * where that would leave nothing.
 *
 * @example settingBand({ low: '48', high: '54' }, { lever: '10', length: '1.5', effect: 'longer' }, 1) // { low: '41.8', high: '46.9' }
 */
export function settingBand(
  band: { readonly low: Decimal.Value; readonly high: Decimal.Value },
  adapter: Adapter | undefined,
  decimals: number,
): { low: string; high: string } {
  const { over, under } = leverShare(adapter);
  const at = (torque: Decimal.Value) => new Exact(torque).times(under).div(over);
  const [least, most] = [at(band.low), at(band.high)];
  for (let places = decimals; places < 12; places += 1) {
    const low = least.toDecimalPlaces(places, Decimal.ROUND_CEIL);
    const high = most.toDecimalPlaces(places, Decimal.ROUND_FLOOR);
    if (low.lte(high)) return { low: low.toFixed(places), high: high.toFixed(places) };
  }
  return { low: least.toFixed(12), high: most.toFixed(12) };
}
