import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { convertDifference, type Unit } from '../units/index.ts';
import { accuracyRatio } from './calibration.ts';
import { type GuardBandMethod, guardBand } from './guard-band.ts';

/** The limits a reading is accepted by, as decimals in the measure's unit. */
export interface Acceptance {
  readonly low: string | null;
  readonly high: string | null;
  /** How much finer than the tolerance the instrument measures; null with one limit alone, or where its doubt is not told. */
  readonly ratio: number | null;
  /** The limits lie inside those of the manual. */
  readonly isNarrowed: boolean;
}

interface Asked {
  /** As the manual prints them. */
  readonly low: string | null;
  readonly high: string | null;
  readonly unit: string;
  readonly decimals: number;
}
/** What the instrument's certificate says. */
interface Doubt {
  /** Expanded uncertainty, k = 2. */
  readonly uncertainty: string;
  readonly unit: string;
}

/**
 * Limits of the manual stepped inward by the doubt of the instrument, one place finer than the manual's, rounded inward. A doubt in another
 * unit is converted; in a unit of another kind it says nothing of this measure, and the limits stay. A measure with one limit alone
 * steps back by the whole doubt, since the other methods rest on the span.
 *
 * Sources: as {@link guardBand} and {@link accuracyRatio}. Errors: RuleError `uncertainty-too-large`, `not-an-uncertainty`.
 *
 * @example acceptance({ low: '4.1240', high: '4.1275', unit: 'in', decimals: 4 }, { uncertainty: '0.0002', unit: 'in' }, 'uncertainty')
 * // { low: '4.12420', high: '4.12730', ratio: 8.75, isNarrowed: true }
 */
export function acceptance(asked: Asked, doubt: Doubt | null, method: GuardBandMethod): Acceptance {
  const { low, high, decimals } = asked;
  const asPrinted = { low, high, ratio: null, isNarrowed: false };
  const expanded = doubt && inUnit(doubt, asked.unit);
  if (!expanded || (low === null && high === null)) return asPrinted;
  const isSpan = low !== null && high !== null && Number(high) > Number(low);
  const ratio = isSpan ? accuracyRatio({ low: Number(low), high: Number(high), expandedUncertainty: expanded }) : null;
  if (method === 'none') return { ...asPrinted, ratio };
  const band = guardBand({
    limits: { ...(low === null ? {} : { low: Number(low) }), ...(high === null ? {} : { high: Number(high) }) },
    expandedUncertainty: expanded,
    method: isSpan ? method : 'uncertainty',
  });
  const inward = (value: number | undefined, mode: Decimal.Rounding) =>
    value === undefined ? null : new Decimal(value.toPrecision(12)).toFixed(Math.max(0, decimals) + 1, mode);
  return {
    low: inward(band.low, Decimal.ROUND_CEIL),
    high: inward(band.high, Decimal.ROUND_FLOOR),
    ...{ ratio, isNarrowed: true },
  };
}

function inUnit({ uncertainty, unit }: Doubt, into: string): number | null {
  if (unit === into) return Number(uncertainty);
  try {
    return convertDifference(Number(uncertainty), unit as Unit, into as Unit);
  } catch (error) {
    if (error instanceof RuleError) return null;
    throw error;
  }
}
