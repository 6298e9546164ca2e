import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

/** More digits than a speed has; a ratio of three decimals divides cleanly in them. */
const Exact = Decimal.clone({ precision: 40 });

/**
 * The speed a governor turns at while the engine turns at `engineRpm`. `driveRatio`: turns of the governor for one turn of the
 * engine, as the application has it. Both in rpm; computed in decimal.
 *
 * Source: the definition of a drive ratio. Errors: RuleError `not-a-speed`, `not-a-ratio`.
 *
 * @example governorSpeed(2700, 0.895) // 2416.5
 */
export function governorSpeed(engineRpm: number, driveRatio: number): number {
  return new Exact(speed(engineRpm, 'engineRpm')).times(ratio(driveRatio)).toNumber();
}

/**
 * The speed of the engine at which its governor turns at `governorRpm`; the other way round of {@link governorSpeed}.
 *
 * @example engineSpeed(2416.5, 0.895) // 2700
 */
export function engineSpeed(governorRpm: number, driveRatio: number): number {
  return new Exact(speed(governorRpm, 'governorRpm')).div(ratio(driveRatio)).toNumber();
}

function speed(rpm: number, path: string): number {
  if (Number.isFinite(rpm) && rpm >= 0) return rpm;
  throw new RuleError('not-a-speed', 'A speed is a number of turns a minute, 0 or more.', path);
}

function ratio(driveRatio: number): number {
  if (Number.isFinite(driveRatio) && driveRatio > 0) return driveRatio;
  throw new RuleError('not-a-ratio', 'A drive ratio is a number above 0.', 'driveRatio');
}
