import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { implausible } from '../limits/index.ts';
import { type AnglesAsked, type BladeStop, readDegrees, type StopAsked } from './asked.ts';

/** One blade at one stop, in degrees as read. */
export interface AngleReading {
  readonly blade: number;
  readonly stop: BladeStop;
  readonly angle: string;
}

/** How far the blades differ at a stop. */
export interface StopSpread {
  readonly stop: BladeStop;
  readonly spread: string;
  readonly good: boolean;
}

export interface AnglesVerdict {
  readonly good: boolean;
  /** Which blade or stop, and by how much. */
  readonly reasons: string[];
  readonly spreads: StopSpread[];
}

/** What a reading is against its stop: `by` is how far outside, in degrees. */
export type AngleStanding = { readonly state: 'inside' } | { readonly state: 'outside'; readonly by: string };

/**
 * Where one reading lies against the band of its stop. A reading that the protractor cannot show, or that is of another unit (radians,
 * minutes of arc), is no reading of this blade.
 *
 * Source: that a band is inclusive and that angles are read blade by blade at each stop is common practice, no source; the figures are
 * data of the revision. A degree is 60 minutes and π/180 rad (SI Brochure, table 8). Errors: RuleError `outside-protractor`,
 * `reading-impossible`, `not-a-number`.
 *
 * @example judgeAngle({ blade: 1, stop: 'low', angle: '13.7' }, asked) // { state: 'outside', by: '0.1' }
 */
export function judgeAngle(
  { blade, stop, angle }: AngleReading,
  { protractor, stops }: Pick<AnglesAsked, 'stops'> & Partial<Pick<AnglesAsked, 'protractor'>>,
): AngleStanding {
  const asked = stops.find((one) => one.stop === stop);
  const path = 'angle';
  if (!asked) throw new RuleError('stop-unknown', `This application has no ${stop} stop.`, path);
  const value = readDegrees(angle, path);
  const which = `Blade ${blade} at the ${stop} stop: ${angle}°`;
  if (protractor && (value.lt(protractor.low) || value.gt(protractor.high)))
    throw new RuleError(
      'outside-protractor',
      `${which} is outside what the protractor can read, ${protractor.low}° to ${protractor.high}°.`,
      path,
    );
  const why = inOtherUnit(value, asked);
  if (why) throw new RuleError('reading-impossible', `${which} is ${why}`, path);
  const by = value.lt(asked.low) ? new Decimal(asked.low).minus(value) : value.minus(asked.high);
  return by.gt(0) ? { state: 'outside', by: by.toString() } : { state: 'inside' };
}

/** A band of one sign is held against the reading without its sign: a blade on the wrong side of zero is badly set, not misread. */
function inOtherUnit(value: Decimal, { low, high }: StopAsked): string | undefined {
  const [one, other] = [Number(low), Number(high)];
  if (one * other <= 0) return implausible(value.toNumber(), { low: one, high: other });
  const [near, far] = [Math.min(Math.abs(one), Math.abs(other)), Math.max(Math.abs(one), Math.abs(other))];
  return implausible(Math.abs(value.toNumber()), { low: near, high: far });
}

/**
 * The angles of a propeller against what its application asks for: every blade at every stop once, after as many cycles as asked. Computed
 * in decimals, so that an angle at the very limit is within it.
 *
 * Errors: those of {@link judgeAngle}, and RuleError `cycles-short`, `blade-missing`, `blade-unknown`, `read-twice`, each at its place.
 *
 * @example judgeAngles({ cycles: 10, readings: [...] }, asked) // { good: false, reasons: ['Blade 2 at the low stop: 13.7°; 13.2° to 13.6° is asked for, 0.1° too much.'], … }
 */
export function judgeAngles(
  { cycles, readings }: { readonly cycles: number; readonly readings: readonly AngleReading[] },
  asked: AnglesAsked,
): AnglesVerdict {
  if (!Number.isSafeInteger(cycles) || cycles < asked.cycles)
    throw new RuleError(
      'cycles-short',
      `Cycled ${cycles} times; ${asked.cycles} are asked for before the angles are read: cycle it on, and read again.`,
      'cycles',
    );
  refuseIncomplete(readings, asked);
  const reasons = readings.flatMap((reading, index) => {
    const standing = at(index, () => judgeAngle(reading, asked));
    return standing.state === 'inside' ? [] : [outInWords(reading, { asked, by: standing.by })];
  });
  const spreads = spreadsOf(readings, asked);
  const wide = spreads.filter(({ good }) => !good).map((one) => wideInWords(one, asked));
  return { good: reasons.length + wide.length === 0, reasons: [...reasons, ...wide], spreads };
}

function at<T>(index: number, rule: () => T): T {
  try {
    return rule();
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw new RuleError(error.code, error.message, `readings/${index}/${error.path}`);
  }
}

function refuseIncomplete(readings: readonly AngleReading[], { blades, stops }: AnglesAsked): void {
  const seen = new Set<string>();
  readings.forEach(({ blade, stop }, index) => {
    const path = `readings/${index}/blade`;
    if (!Number.isSafeInteger(blade) || blade < 1 || blade > blades)
      throw new RuleError('blade-unknown', `This propeller has blades 1 to ${blades}.`, path);
    if (seen.has(`${blade} ${stop}`))
      throw new RuleError('read-twice', `Blade ${blade} at the ${stop} stop is entered twice.`, path);
    seen.add(`${blade} ${stop}`);
  });
  const missing = stops.flatMap(({ stop }) => {
    const left = bladesOf(blades).filter((blade) => !seen.has(`${blade} ${stop}`));
    return left.length === 0 ? [] : [`${stop} of blade ${left.join(', ')}`];
  });
  if (missing.length > 0) throw new RuleError('blade-missing', `Not read: ${missing.join('; ')}.`, 'readings');
}

export function bladesOf(blades: number): number[] {
  return Array.from({ length: blades }, (_, index) => index + 1);
}

/** How far the blades read so far differ at each stop where at least two are. Only where the revision says how far they may is it judged. */
export function spreadsOf(readings: readonly AngleReading[], { stops }: Pick<AnglesAsked, 'stops'>): StopSpread[] {
  return stops.flatMap(({ stop, spread }) => {
    const read = readings.filter((one) => one.stop === stop).map(({ angle }) => readDegrees(angle, 'readings'));
    if (read.length < 2) return [];
    const between = Decimal.max(...read).minus(Decimal.min(...read));
    return [{ stop, spread: between.toString(), good: spread === undefined || between.lte(spread) }];
  });
}

function outInWords(
  { blade, stop, angle }: AngleReading,
  { asked, by }: { asked: Pick<AnglesAsked, 'stops'>; by: string },
): string {
  const limits = asked.stops.find((one) => one.stop === stop);
  const side = readDegrees(angle, 'angle').lt(limits?.low ?? '0') ? 'too little' : 'too much';
  return `Blade ${blade} at the ${stop} stop: ${angle}°; ${limits?.low}° to ${limits?.high}° is asked for, ${by}° ${side}.`;
}

function wideInWords({ stop, spread }: StopSpread, { stops }: AnglesAsked): string {
  const most = stops.find((one) => one.stop === stop)?.spread ?? '0';
  const over = new Decimal(spread).minus(most).toString();
  return `The blades differ by ${spread}° at the ${stop} stop; ${most}° is allowed, ${over}° too much.`;
}
