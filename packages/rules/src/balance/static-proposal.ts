import { RuleError } from '../errors/index.ts';
import {
  awayFrom,
  type OpenPlace,
  optionsOf,
  readPlaces,
  type StaticOption,
  type StaticPiece,
  type StaticPlace,
} from './static-places.ts';
import {
  add,
  angleOf,
  length,
  polar,
  readWeight,
  scale,
  subtract,
  type Vector,
  type Weight,
  weightOf,
  ZERO,
} from './vector.ts';

/** What goes into one place. */
export interface StaticFilling {
  readonly place: string;
  readonly pieces: { readonly part: string; readonly count: number }[];
  readonly moment: number;
  readonly stack: number;
}

/** Places on the light side that are searched, nearest first. */
const MOST_PLACES = 6;
/** Fillings of half of the places that are compared with those of the other half. */
const MOST_COMBINED = 1024;
/** Fillings of one place that are looked at. */
const MOST_OPTIONS = 48;

/** One filling of several places: what it makes together, and which option of each. */
interface Combined {
  readonly made: Vector;
  readonly pieces: number;
  /** The filling of the last of the places, after those of the places before it. */
  readonly last: StaticOption | undefined;
  readonly before: Combined | undefined;
}
interface Found {
  /** What is left, where less than `enough` counts as `enough`. */
  cost: number;
  left: number;
  pieces: number;
  options: readonly StaticOption[];
}

/**
 * Whole pieces in the places there are that make a moment: of every filling of the (six nearest) places less than a quarter turn
 * from it the one that leaves least, and of those that leave no more than `enough` the one of fewest pieces. A place on the heavy side
 * is never filled. Every filling is tried while a half of the places has 1,024 or fewer; of more, evenly spaced ones are, and then those
 * of every two places (48 each) with the others as they are.
 * `residual` is what is placed minus what was asked for; whether it matters is for the caller.
 * Source: vector addition; the search is our own, compared with trying everything; “fewest pieces” is common practice, no source.
 * Caution: number, size and place of weights are limited by the current approved manual.
 *
 * @throws RuleError not-an-amount, not-an-angle, not-a-place, not-a-piece, same-place-twice
 * @example 60 g·in @ 0 with pieces of 6 g at A (0°) and B (90°), radius 5 → two pieces at A
 */
export function proposeStatic(
  asked: Weight,
  given: { places: readonly StaticPlace[]; hardware: readonly StaticPiece[]; enough?: number | undefined },
): { fillings: StaticFilling[]; residual: Weight } {
  const wanted = readWeight(asked, 'moment');
  const enough = given.enough ?? 0;
  if (!(enough >= 0)) throw new RuleError('not-an-amount', 'What is enough is a moment, 0 or more.', 'enough');
  const turn = angleOf(wanted);
  const places = readPlaces(given.places, given.hardware)
    .filter((place) => awayFrom(place, wanted) < 90 - 1e-9)
    .sort((a, b) => awayFrom(a, wanted) - awayFrom(b, wanted))
    .slice(0, MOST_PLACES)
    // Turned to what is asked for: what is left along it then tells how near a filling can come.
    .map((place) => ({ ...place, direction: polar(1, place.angle - turn) }));
  // Nothing placed leaves what was asked for, so twice of it in its direction is always too much.
  const whole = places.map((place) =>
    thin(optionsOf(place, given.hardware, (2 * asked.mass) / place.direction.re), MOST_OPTIONS),
  );
  const sought = { wanted: { re: length(wanted), im: 0 }, enough };
  const { options } = searchedFor(sought, { places, whole });
  const left = subtract(placedBy(places, options), sought.wanted);
  const made = polar(length(left), angleOf(left) + turn);
  return {
    fillings: places.flatMap(({ name }, i) => fillingOf(name, options[i]!, given.hardware)),
    residual: weightOf(made, 1e-9 * asked.mass),
  };
}

function searchedFor(sought: Sought, { places, whole }: Searched): Found {
  const half = Math.ceil(places.length / 2);
  const most = half === 0 ? 0 : Math.floor(MOST_COMBINED ** (1 / half));
  const best = bestOf(
    sought,
    [places.slice(0, half), places.slice(half)],
    whole.map((options) => thin(options, most)),
  );
  return whole.some(({ length: all }) => all > most) ? refined(sought, { places, whole }, best) : best;
}

interface Sought {
  readonly wanted: Vector;
  readonly enough: number;
}

function fillingOf(place: string, option: StaticOption, hardware: readonly StaticPiece[]): StaticFilling[] {
  const pieces = hardware.flatMap(({ part }, i) => (option.counts[i]! > 0 ? [{ part, count: option.counts[i]! }] : []));
  return pieces.length === 0 ? [] : [{ place, pieces, moment: option.moment, stack: option.stack }];
}

/** So many of them, evenly spaced, the first and the last among them. */
function thin(options: readonly StaticOption[], most: number): StaticOption[] {
  if (options.length <= most) return [...options];
  return Array.from({ length: most }, (_, i) => options[Math.round((i * (options.length - 1)) / (most - 1))]!);
}

function placedBy(places: readonly OpenPlace[], options: readonly StaticOption[]): Vector {
  return places.reduce<Vector>((sum, { direction }, i) => add(sum, scale(direction, options[i]!.moment)), ZERO);
}

function combined(places: readonly OpenPlace[], options: readonly (readonly StaticOption[])[]): Combined[] {
  let all: Combined[] = [{ made: ZERO, pieces: 0, last: undefined, before: undefined }];
  for (const [i, { direction }] of places.entries())
    all = all.flatMap((before) =>
      options[i]!.map((option) => ({
        made: {
          re: before.made.re + direction.re * option.moment,
          im: before.made.im + direction.im * option.moment,
        },
        pieces: before.pieces + option.pieces,
        last: option,
        before,
      })),
    );
  return all;
}

/** The option of each place, in order. */
function optionsIn({ last, before }: Combined): StaticOption[] {
  return last && before ? [...optionsIn(before), last] : [];
}

/** Every filling of the first places against the fillings of the others that come near what it leaves. */
function bestOf(sought: Sought, [first, others]: OpenPlace[][], options: readonly (readonly StaticOption[])[]): Found {
  const near = combined(first!, options.slice(0, first!.length)).sort((a, b) => a.pieces - b.pieces);
  const far = combined(others!, options.slice(first!.length)).sort((a, b) => a.made.re - b.made.re);
  const best: Found = { cost: Infinity, left: Infinity, pieces: Infinity, options: [] };
  for (const one of near) {
    if (best.cost <= sought.enough && one.pieces > best.pieces) break;
    matched(sought, { one, far }, best);
  }
  return best;
}

/** Goes outwards from what would be met exactly, while anything there can still be as good. */
function matched({ wanted, enough }: Sought, { one, far }: { one: Combined; far: Combined[] }, best: Found): void {
  const rest = subtract(wanted, one.made);
  const size = length(wanted);
  const middle = firstFrom(far, rest.re);
  for (const step of [1, -1])
    for (let i = step === 1 ? middle : middle - 1; i >= 0 && i < far.length; i += step) {
      const other = far[i]!;
      const [along, across] = [other.made.re - rest.re, other.made.im - rest.im];
      const most = Math.max(best.cost, enough) * (1 + 1e-9);
      if (Math.abs(along) > most) break;
      if (Math.abs(across) > most) continue;
      const left = Math.sqrt(along * along + across * across);
      const cost = Math.max(left, enough);
      // Most are clearly worse: nothing is made for them.
      if (cost - best.cost > 1e-9 * size) continue;
      const tried = { cost, left, pieces: one.pieces + other.pieces };
      if (isBetter(tried, best, size))
        Object.assign(best, tried, { options: [...optionsIn(one), ...optionsIn(other)] });
    }
}

function isBetter(tried: Omit<Found, 'options'>, best: Omit<Found, 'options'>, size: number): boolean {
  const noise = 1e-9 * size;
  if (Math.abs(tried.cost - best.cost) > noise) return tried.cost < best.cost;
  if (tried.pieces !== best.pieces) return tried.pieces < best.pieces;
  return tried.left < best.left - noise;
}

function firstFrom(far: readonly Combined[], re: number): number {
  let [low, high] = [0, far.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (far[middle]!.made.re < re) low = middle + 1;
    else high = middle;
  }
  return low;
}

interface Searched {
  readonly places: readonly OpenPlace[];
  readonly whole: readonly (readonly StaticOption[])[];
}

/** Every two places with all their fillings: alone first, then with the others as they are, until nothing comes nearer. */
function refined(sought: Sought, searched: Searched, start: Found): Found {
  const alone = { ...start, options: searched.whole.map(([none]) => none!) };
  const pairs = searched.places.flatMap((_, i) => searched.places.slice(i + 1).map((_, k) => [i, i + 1 + k] as const));
  const size = length(sought.wanted);
  let found = start;
  for (const pair of pairs) {
    const tried = withPair(sought, searched, { from: alone.options, pair });
    if (isBetter(tried, found, size)) found = tried;
  }
  for (let again = true; again; ) {
    again = false;
    for (const pair of pairs) {
      const tried = withPair(sought, searched, { from: found.options, pair });
      if (!isBetter(tried, found, size)) continue;
      found = tried;
      again = true;
    }
  }
  return found;
}

/** Two places filled best, the others left as they are. */
function withPair(
  { wanted, enough }: Sought,
  { places, whole }: Searched,
  { from, pair: [i, j] }: { from: readonly StaticOption[]; pair: readonly [number, number] },
): Found {
  const others = from.map((option, k) => (k === i || k === j ? whole[k]![0]! : option));
  const rest = subtract(wanted, placedBy(places, others));
  const best = bestOf({ wanted: rest, enough }, [[places[i]!], [places[j]!]], [whole[i]!, whole[j]!]);
  const options = others.map((option, k) => (k === i ? best.options[0]! : k === j ? best.options[1]! : option));
  return { ...best, pieces: options.reduce((sum, { pieces }) => sum + pieces, 0), options };
}
