import type { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { Exact, readDecimal, refuseImpossible } from '../reading/index.ts';
import { type Pack, proposeShims, thicknessOf } from './propose-shims.ts';

/** A term of the formula: what is measured, whether it is added or taken off, and what the manual allows it to be. */
export interface FitTerm {
  readonly name: string;
  readonly sign: '+' | '-';
  readonly low?: string | undefined;
  readonly high?: string | undefined;
}

/** How a revision fits shims. Decimal text in one unit; bounds inclusive. */
export interface FitSpec {
  readonly unit: string;
  readonly places: readonly string[];
  readonly terms: readonly FitTerm[];
  /** Added to the sum of the terms: with no shims, the gap that is left (below zero: the parts press). */
  readonly constant: string;
  /** What has to be left of the gap when the shims are in (end play), or pressed beyond it (preload). */
  readonly leaves: { readonly kind: 'end-play' | 'preload'; readonly low: string; readonly high: string };
  readonly shims: readonly { readonly thickness: string; readonly part?: string | undefined }[];
  readonly mostPieces: number;
  /** What is measured once it is together. */
  readonly trial: { readonly name: string; readonly unit: string; readonly low: string; readonly high: string };
}

/** One place as it was measured and fitted. */
export interface PlaceFitted {
  readonly place: string;
  readonly measured: readonly { readonly name: string; readonly value: string }[];
  readonly shims: Pack;
  readonly trial: string;
}

export interface FitVerdict {
  readonly good: boolean;
  readonly reasons: string[];
}

/** The pack of shims a place wants: thinnest, thickest and the middle of the two. */
export interface WantedPack {
  readonly low: Decimal;
  readonly middle: Decimal;
  readonly high: Decimal;
}

/**
 * The thickness of shims a place wants: the measured terms with their signs and the constant make the gap without shims; the end play
 * that has to be left comes off it, a preload is added.
 *
 * Source: the formula is data of the revision (that preload is set by shims after measuring: common practice, no source). Errors:
 * RuleError `fit-missing`, `not-a-number`.
 *
 * @example depth 1.250 less height 1.222, preload 0.001 to 0.003 → 0.029 to 0.031
 */
export function packWanted(spec: FitSpec, measured: PlaceFitted['measured']): WantedPack {
  const gap = spec.terms.reduce((sum, { name, sign }) => {
    const value = measured.find((one) => one.name === name)?.value ?? '';
    if (value.trim() === '') throw new RuleError('fit-missing', `${name} is not measured`, 'measured');
    const read = readDecimal(value, { what: name, path: 'measured' });
    return sign === '+' ? sum.plus(read) : sum.minus(read);
  }, new Exact(spec.constant));
  const { kind, low, high } = spec.leaves;
  const [thin, thick] = kind === 'preload' ? [gap.plus(low), gap.plus(high)] : [gap.minus(high), gap.minus(low)];
  return { low: thin, high: thick, middle: thin.plus(thick).div(2) };
}

/** What is proposed for a place once it is measured: the band, and the fewest shims that meet it; undefined where none do. */
export function fitProposed(spec: FitSpec, measured: PlaceFitted['measured']): WantedPack & { pack: Pack | undefined } {
  const wanted = packWanted(spec, measured);
  const sizes = spec.shims.map(({ thickness }) => thickness);
  return { ...wanted, pack: proposeShims(wanted, sizes, spec.mostPieces) };
}

/**
 * Whether the shims at each place are whole ones of the revision, make the pack wanted there, and the trial after fitting is within its
 * limits. A good trial with another pack contradicts what was measured: it is never signed as good, but measured again.
 *
 * Source and errors: as {@link packWanted}; RuleError `fit-missing` with what is missing by name, `bad-shims` for a thickness the
 * revision does not have or too many pieces, `reading-impossible`.
 *
 * @example wanted 0.029 to 0.031, fitted 0.020 + 0.010, trial inside → { good: true, reasons: [] }
 */
export function judgeFit(fitted: readonly PlaceFitted[], spec: FitSpec): FitVerdict {
  const missing = missingFit(fitted, spec);
  if (missing) throw new RuleError('fit-missing', missing, 'places');
  const reasons = spec.places.flatMap((place) => {
    const given = fitted.find((one) => one.place === place);
    return given ? placeReasons(given, spec) : [];
  });
  return { good: reasons.length === 0, reasons };
}

/** What is not entered yet, the first of it by name; undefined when nothing is. */
export function missingFit(fitted: readonly PlaceFitted[], spec: FitSpec): string | undefined {
  for (const place of spec.places) {
    const given = fitted.find((one) => one.place === place);
    const term = spec.terms.find(({ name }) => !given?.measured.find((one) => one.name === name)?.value.trim());
    if (term) return `${place}: ${term.name} is not measured`;
    if (!given?.shims.length) return `${place}: the shims fitted are not entered, 0 where there are none`;
    if (given.trial.trim() === '') return `${place}: ${spec.trial.name} is not measured`;
  }
  return undefined;
}

function placeReasons(given: PlaceFitted, spec: FitSpec): string[] {
  refuseOtherShims(given, spec);
  const { place } = given;
  const wanted = packWanted(spec, given.measured);
  const pack = thicknessOf(given.shims);
  const isPack = pack.gte(wanted.low) && pack.lte(wanted.high);
  return [
    ...spec.terms.flatMap((term) => termReasons(term, { given, unit: spec.unit })),
    ...(isPack
      ? []
      : [`${place}: shims of ${pack.toFixed()} ${spec.unit} fitted; ${bandWords(wanted)} is wanted: measure again.`]),
    ...outside(given.trial, spec.trial, `${place}: ${spec.trial.name}`),
  ];
}

function termReasons(
  { name, low, high }: FitTerm,
  { given: { place, measured }, unit }: { given: PlaceFitted; unit: string },
): string[] {
  if (low === undefined || high === undefined) return [];
  const value = measured.find((one) => one.name === name)?.value ?? '';
  return outside(value, { low, high, unit }, `${place}: ${name}`);
}

function outside(text: string, { low, high, unit }: Omit<FitSpec['trial'], 'name'>, what: string): string[] {
  const value = readDecimal(text, { what, path: 'places' });
  const band = { low: new Exact(low), high: new Exact(high) };
  if (value.gte(band.low) && value.lte(band.high)) return [];
  refuseImpossible(value, band, { what, path: 'places' });
  return [`${what} is ${text} ${unit}; ${low} to ${high} is asked for.`];
}

function refuseOtherShims({ place, shims }: PlaceFitted, spec: FitSpec): void {
  const refuse = (why: string): never => {
    throw new RuleError('bad-shims', `${place}: ${why}`, 'places');
  };
  const unknown = shims.find(({ thickness }) => !spec.shims.some((one) => new Exact(one.thickness).eq(thickness)));
  if (unknown) refuse(`there is no shim of ${unknown.thickness} ${spec.unit}.`);
  const pieces = shims.reduce((sum, one) => sum + one.pieces, 0);
  if (pieces > spec.mostPieces) refuse(`${pieces} shims; ${spec.mostPieces} are allowed.`);
}

/** A band as it is shown: sums of decimals as written, which need no rounding. */
export function bandWords({ low, high }: Pick<WantedPack, 'low' | 'high'>): string {
  return `${low.toFixed()} to ${high.toFixed()}`;
}

/** A pack in words: `1 × 0.020 + 1 × 0.010 = 0.030`. */
export function packWords(pack: Pack): string {
  const used = pack.filter(({ pieces }) => pieces > 0);
  if (used.length === 0) return 'no shims';
  return `${used.map(({ thickness, pieces }) => `${pieces} × ${thickness}`).join(' + ')} = ${thicknessOf(used).toFixed()}`;
}

/** Shims as they stand beside the signature. */
export function sayFit(fitted: readonly PlaceFitted[], spec: FitSpec): { name: string; value: string }[] {
  return fitted.flatMap(({ place, measured, shims, trial }) => [
    {
      name: `${place}, measured`,
      value: measured.map(({ name, value }) => `${name} ${value} ${spec.unit}`).join(', '),
    },
    {
      name: `${place}, shims`,
      value: `${packWords(shims)} ${spec.unit}${partWords(shims, spec)}; ${bandWords(packWanted(spec, measured))} wanted`,
    },
    { name: `${place}, ${spec.trial.name}`, value: `${trial} ${spec.trial.unit}` },
  ]);
}

function partWords(pack: Pack, { shims }: FitSpec): string {
  const parts = pack.flatMap(({ thickness, pieces }) => {
    const part = pieces > 0 && shims.find((one) => new Exact(one.thickness).eq(thickness))?.part;
    return part ? [part] : [];
  });
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}
