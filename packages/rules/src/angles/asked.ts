import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { acceptance, type GuardBandMethod } from '../measurement/index.ts';

/** Where the pitch change comes to rest. */
export type BladeStop = 'low' | 'high' | 'feather' | 'reverse';

/** What one application asks for at a stop: bounds inclusive, degrees as decimal text, below zero where the blade reverses. */
export interface StopAsked {
  readonly stop: BladeStop;
  readonly low: string;
  readonly high: string;
  /** How far the blades may differ there. */
  readonly spread?: string | undefined;
}

/** What a revision asks of the angles of one application. */
export interface AnglesAsked {
  readonly blades: number;
  /** Where on the blade the protractor is held. */
  readonly station: { readonly at: string; readonly unit: string };
  /** How often the propeller is cycled on air before it is read. */
  readonly cycles: number;
  /** What the protractor can read at all. */
  readonly protractor: { readonly low: string; readonly high: string };
  readonly stops: readonly StopAsked[];
}

/** One application’s part of a table of angles, or undefined where the table does not have it. */
export function anglesFor<A extends { readonly applicationId: string; readonly stops: readonly StopAsked[] }>(
  table: Omit<AnglesAsked, 'stops'> & { readonly applications: readonly A[] },
  applicationId: string | null,
): AnglesAsked | undefined {
  const own = table.applications.find((one) => one.applicationId === applicationId);
  const { blades, station, cycles, protractor } = table;
  return own && { blades, station, cycles, protractor, stops: own.stops };
}

/**
 * The same with every limit stepped inward by the doubt of the protractor, as {@link acceptance} does it. The spread is the difference of
 * two readings with one instrument and is stepped back by its whole doubt (common practice, no source).
 *
 * Errors: RuleError `uncertainty-too-large` where no angle could be accepted.
 */
export function acceptedAngles(
  asked: AnglesAsked,
  doubt: { readonly uncertainty: string; readonly unit: string } | null,
  method: GuardBandMethod,
): AnglesAsked {
  if (method === 'none') return asked;
  const stops = asked.stops.map(({ stop, low, high, spread }) => {
    const decimals = Math.max(...[low, high].map(decimalsOf));
    const band = acceptance({ low, high, unit: 'degrees', decimals }, doubt, method);
    const most =
      spread === undefined
        ? null
        : acceptance({ low: null, high: spread, unit: 'degrees', decimals: decimalsOf(spread) }, doubt, method).high;
    return { stop, low: band.low ?? low, high: band.high ?? high, ...(most === null ? {} : { spread: most }) };
  });
  return { ...asked, stops };
}

function decimalsOf(text: string): number {
  return text.split('.')[1]?.length ?? 0;
}

export function readDegrees(text: string, path: string): Decimal {
  if (!/^-?\d{1,12}(\.\d{1,8})?$/.test(text)) throw new RuleError('not-a-number', 'This is no decimal number.', path);
  return new Decimal(text);
}
