import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';
import { convert } from '../units/index.ts';
import { proposeStatic, type StaticFilling } from './static-proposal.ts';
import { add, length, polar, subtract, type Vector, type Weight, weightOf, ZERO } from './vector.ts';
import { permissibleUnbalance } from './weights.ts';

/** What a manual asks of the static balance of a propeller; numbers as decimal text. */
export interface StaticSpec {
  /** Of every moment; masses and lengths are in its two units. */
  readonly unit: 'g-in' | 'oz-in' | 'g-mm';
  readonly blades: number;
  readonly places: readonly {
    readonly name: string;
    /** Degrees clockwise from blade 1 as seen from the front. */
    readonly angle: string;
    readonly radius: string;
    readonly pieces: number;
    readonly stack?: string | undefined;
  }[];
  readonly hardware: readonly { readonly part: string; readonly mass: string; readonly thickness: string }[];
  /** Of each reading by the manual, or of both together as a grade of ISO 21940-11. */
  readonly limit:
    | { readonly by: 'manual'; readonly moment: string }
    | { readonly by: 'iso-21940-11'; readonly grade: string; readonly rpm: string; readonly massKg: string };
}

/** One way of standing on the stand: the heavy side, and the weight at a radius on the light side that levels it. */
export interface StaticReading {
  readonly heavy: string;
  readonly weight?: string | undefined;
  readonly radius?: string | undefined;
}
export interface StaticReadings {
  /** Blade 1 up: what is heavy to the `right` or `left`, seen from the front. */
  readonly vertical: StaticReading;
  /** Blade 1 to the right: whether it or the `opposite` side is heavy. */
  readonly horizontal: StaticReading;
}
export interface StaticPlaced {
  readonly place: string;
  readonly part: string;
  readonly pieces: number;
}
/** What was read before, on which pieces, which pieces it has now, and what was read then. */
export interface StaticEntry {
  readonly before: StaticReadings;
  readonly found: readonly StaticPlaced[];
  readonly placed: readonly StaticPlaced[];
  readonly after: StaticReadings;
}

export interface StaticVerdict {
  readonly good: boolean;
  readonly reasons: string[];
  readonly limit: number;
  readonly before: Weight;
  readonly after: Weight;
  /** What the pieces make of the readings before. */
  readonly expected: Weight;
  /** True where what was read after is not what the pieces make of what was read before. */
  readonly isOdd: boolean;
}
export interface StaticAdvice {
  readonly fillings: StaticFilling[];
  readonly left: Weight;
  readonly reachable: boolean;
  /** Where it is not reachable: how near the places come. */
  readonly sentence: string;
}

/** A moment as it is shown: two decimals, rounded up, never in the part’s favour. */
export function shown(moment: number): string {
  return Decimal.max(new Decimal(moment).minus(1e-9), 0).toDecimalPlaces(2, Decimal.ROUND_UP).toString();
}

/** The limit as it is shown: as the manual prints it, or of a grade the two decimals below it. */
export function limitText({ limit, unit }: Pick<StaticSpec, 'limit' | 'unit'>): string {
  if (limit.by === 'manual') return limit.moment;
  return new Decimal(limitOf({ limit, unit })).toDecimalPlaces(2, Decimal.ROUND_DOWN).toString();
}

/**
 * The propeller on the stand, judged by its readings after the weights: each within the manual’s limit, or both as one vector within the
 * permissible residual unbalance of a grade. A reading is the moment of the weight that levels it, computed in decimals.
 *
 * Source: ISO 21940-11:2016 for the grade; two positions a quarter turn apart give both parts of the unbalance (statics). That readings
 * which the weights do not explain are looked at again, and the bounds of what is believed, are common practice, no source.
 *
 * @throws RuleError reading-missing, reading-unlike, reading-impossible, no-such-place, no-such-piece, same-piece-twice,
 * too-many-pieces, stack-too-long
 * @example 2 g at 5 in on a limit of 45 g-in → good
 */
export function judgeStatic(entry: StaticEntry, spec: StaticSpec): StaticVerdict {
  const limit = limitOf(spec);
  const before = readingsOf(entry.before, 'before', { limit, most: 100 });
  const added = subtract(momentsOf(entry.placed, 'placed', spec), momentsOf(entry.found, 'found', spec));
  const after = readingsOf(entry.after, 'after', { limit, most: 20 });
  const expected = add(before.vector, added);
  const odd = length(subtract(after.vector, expected));
  const reasons = reasonsOf(after, limit, spec);
  return {
    ...{ good: reasons.length === 0, reasons, limit },
    ...{ before: weightOf(before.vector), after: weightOf(after.vector) },
    expected: weightOf(expected, 1e-9 * (length(before.vector) + length(added))),
    isOdd: odd > limit && odd > length(added) / 2,
  };
}

/**
 * Where whole pieces would go: all that the propeller should have on it, from what was read and what it had on then.
 *
 * @throws RuleError as {@link judgeStatic} @example a light side without a place → not reachable, and how near it comes
 */
export function adviseStatic({ before, found }: Pick<StaticEntry, 'before' | 'found'>, spec: StaticSpec): StaticAdvice {
  const limit = limitOf(spec);
  const { vector } = readingsOf(before, 'before', { limit, most: 100 });
  const asked = subtract(momentsOf(found, 'found', spec), vector);
  const places = spec.places.map((place) => ({
    ...{ name: place.name, angle: Number(place.angle), radius: Number(place.radius), pieces: place.pieces },
    stack: place.stack === undefined ? undefined : Number(place.stack),
  }));
  const hardware = spec.hardware.map(({ part, mass, thickness }) => ({
    ...{ part, mass: Number(mass), thickness: Number(thickness) },
  }));
  // A tenth of the limit is as good as nothing, common practice, no source: fewer pieces before the last digit.
  const { fillings, residual } = proposeStatic(weightOf(asked), { places, hardware, enough: limit / 10 });
  const left = polar(residual.mass, residual.angle);
  const reachable = reasonsOf({ vector: left, parts: partsOf(left) }, limit, spec).length === 0;
  return {
    fillings,
    left: residual,
    reachable,
    sentence: reachable ? '' : unreachable(residual, { fillings, spec }),
  };
}

function unreachable(left: Weight, { fillings, spec }: { fillings: unknown[]; spec: StaticSpec }) {
  if (spec.places.length === 0)
    return 'This propeller has no places for weights: it is corrected as the current approved manual says.';
  const where = fillings.length === 0 ? 'no place is on the light side' : 'not reachable with the places there are';
  const nearest = `nearest leaves ${shown(left.mass)} ${spec.unit} at ${Math.round(left.angle)}°, limit ${limitText(spec)}`;
  return `${where}: ${nearest}.`.replace(/^./, (letter) => letter.toUpperCase());
}

/** In the unit of the moments. @throws RuleError not-above-zero */
export function limitOf({ limit, unit }: Pick<StaticSpec, 'limit' | 'unit'>): number {
  if (limit.by === 'manual') return Number(limit.moment);
  const given = { grade: Number(limit.grade), mass: Number(limit.massKg), rpm: Number(limit.rpm) };
  return convert(permissibleUnbalance(given), 'g-mm', unit);
}

/** Where the heavy side of a reading points. */
const sides: Readonly<Record<'vertical' | 'horizontal', Readonly<Record<string, number>>>> = {
  vertical: { right: 90, left: 270, level: 0 },
  horizontal: { 'blade-1': 0, opposite: 180, level: 0 },
};
const positions = ['vertical', 'horizontal'] as const;

interface Read {
  readonly vector: Vector;
  readonly parts: Readonly<Record<(typeof positions)[number], number>>;
}

function readingsOf(readings: StaticReadings, when: string, bound: { limit: number; most: number }): Read {
  const read = positions.map((position) => {
    const path = `${when}.${position}`;
    const turn = sides[position][readings[position].heavy];
    if (turn === undefined)
      throw new RuleError('reading-missing', 'Say which side is heavy, or that it is level.', `${path}.heavy`);
    const moment = momentOf(readings[position], path);
    if (moment < bound.most * bound.limit) return { moment, vector: polar(moment, turn) };
    const rule = `${moment} is ${bound.most} times the limit or more: is it in the unit of the manual?`;
    throw new RuleError('reading-impossible', rule, `${path}.weight`);
  });
  const vector = read.reduce((sum, one) => add(sum, one.vector), ZERO);
  return { vector, parts: { vertical: read[0]!.moment, horizontal: read[1]!.moment } };
}

function momentOf({ heavy, weight, radius }: StaticReading, path: string): number {
  if (heavy === 'level') {
    if (weight === undefined || new Decimal(weight).isZero()) return 0;
    throw new RuleError(
      'reading-unlike',
      'What hangs level needs no weight: say which side is heavy.',
      `${path}.heavy`,
    );
  }
  for (const [name, text] of Object.entries({ weight, radius })) {
    if (text !== undefined && new Decimal(text).gt(0)) continue;
    const rule = 'Enter the weight that levels it, and at which radius; both are above 0.';
    throw new RuleError('reading-missing', rule, `${path}.${name}`);
  }
  return new Decimal(weight!).times(radius!).toNumber();
}

function momentsOf(placed: readonly StaticPlaced[], when: string, spec: StaticSpec): Vector {
  refuseOverfull(placed, when, spec);
  return placed
    .map(({ place, part, pieces }) => {
      const { angle, radius } = spec.places.find(({ name }) => name === place)!;
      const { mass } = spec.hardware.find((one) => one.part === part)!;
      return polar(new Decimal(mass).times(radius).times(pieces).toNumber(), Number(angle));
    })
    .reduce(add, ZERO);
}

/** Every piece in a place there is, of a kind that is allowed, no more and no longer than allowed. */
function refuseOverfull(placed: readonly StaticPlaced[], when: string, spec: StaticSpec): void {
  const stacks = new Map<string, { pieces: number; length: Decimal }>();
  for (const [i, { place, part, pieces }] of placed.entries()) {
    const at = `${when}[${i}]`;
    const room = spec.places.find(({ name }) => name === place);
    if (!room) throw new RuleError('no-such-place', `There is no place ${place} on this propeller.`, `${at}.place`);
    const piece = spec.hardware.find((one) => one.part === part);
    if (!piece) throw new RuleError('no-such-piece', `${part} is no weight the manual allows here.`, `${at}.part`);
    if (placed.findIndex((other) => other.place === place && other.part === part) < i)
      throw new RuleError('same-piece-twice', `${part} at ${place} is listed twice.`, at);
    const before = stacks.get(place) ?? { pieces: 0, length: new Decimal(0) };
    const now = {
      pieces: before.pieces + pieces,
      length: before.length.plus(new Decimal(piece.thickness).times(pieces)),
    };
    stacks.set(place, now);
    if (now.pieces > room.pieces)
      throw new RuleError(
        'too-many-pieces',
        `${place} has ${now.pieces} pieces; ${room.pieces} is the most.`,
        `${at}.pieces`,
      );
    if (room.stack !== undefined && now.length.gt(room.stack))
      throw new RuleError(
        'stack-too-long',
        `${place} is stacked ${now.length} long; ${room.stack} is the most.`,
        `${at}.pieces`,
      );
  }
}

const partsOf = ({ re, im }: Vector) => ({ vertical: Math.abs(im), horizontal: Math.abs(re) });

function reasonsOf({ vector, parts }: Read, limit: number, spec: StaticSpec): string[] {
  const { unit } = spec;
  const allowed = `${limitText(spec)} ${unit} is allowed`;
  if (spec.limit.by === 'iso-21940-11') {
    const whole = length(vector);
    return whole <= limit * (1 + 1e-12) ? [] : [`What is left is ${shown(whole)} ${unit}; ${allowed}.`];
  }
  return positions
    .filter((position) => parts[position] > limit * (1 + 1e-12))
    .map((position) => `What is left ${inWords[position]} is ${shown(parts[position])} ${unit}; ${allowed}.`);
}

const inWords = { vertical: 'with blade 1 up', horizontal: 'with blade 1 level' };
