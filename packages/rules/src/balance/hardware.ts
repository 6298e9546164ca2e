import { RuleError } from '../errors/index.ts';
import { length, polar, readAngle, readWeight, scale, subtract, type Vector, type Weight, weightOf } from './vector.ts';

/** A place for weights with the room that is left in it. */
export type Place = { name: string; angle: number; mass: number; pieces: number };
/** A piece of stock: its mass, and how many there are. */
export type Piece = { part: string; mass: number; onHand: number };
/** What goes into one place. */
export type Filling = { place: string; mass: number; pieces: { part: string; count: number }[] };

/** As many fillings of one place as are looked at, lightest first; heavier ones than asked for are left out before. */
const MOST_FILLINGS = 600;
/** Places next to the direction asked for that are looked at. */
const NEAREST = 6;

/** What a piece more counts as against mass, where two fillings leave the same: common practice, no source. */
const PIECE = 0.03;

/** So many of each piece, and in all. */
type Mix = { mass: number; count: number; counts: number[] };

/**
 * Whole pieces of stock in the places nearest to a weight that is asked for: of every filling of every two of them the one
 * that leaves least, and of equals the lightest in few pieces; what two places cannot take goes on into others. What is left
 * below `enough` (nobody could read it; default 0) is equal.
 * Masses in one unit; degrees. `residual` is what is placed minus what was asked for; whether it matters is for the caller.
 * Source: a search, common practice, no source.
 *
 * @throws RuleError not-an-amount, not-an-angle, no-holes, not-a-piece
 */
export function fillPlaces(
  asked: Weight,
  options: { places: Place[]; catalogue: Piece[]; mostPlaces: number; mostMass: number; enough?: number | undefined },
): { fillings: Filling[]; residual: Weight } {
  const wanted = readWeight(asked, 'weight');
  const places = readPlaces(options.places);
  const catalogue = options.catalogue.filter(({ onHand }) => onHand > 0);
  const odd = catalogue.findIndex(({ mass }) => !(Number.isFinite(mass) && mass > 0));
  if (odd >= 0) throw new RuleError('not-a-piece', 'A piece has a mass above 0.', `catalogue[${odd}].mass`);
  let state = { left: wanted, fillings: [] as Filling[], mass: options.mostMass, stock: catalogue };
  for (;;) {
    const taken = new Set(state.fillings.map(({ place }) => place));
    const free = options.mostPlaces - taken.size;
    const open = nearest(
      places.filter(({ name }) => !taken.has(name)),
      state.left,
    );
    if (free < 1 || open.length === 0) break;
    const next = bestOfTwo(state.left, open, { ...state, free, enough: options.enough ?? 0 });
    if (next.fillings.length === 0) break;
    state = after(state, places, next.fillings);
  }
  const { fillings } = state;
  const rounding = 1e-9 * Math.max(asked.mass, ...fillings.map(({ mass }) => mass), 0);
  return { fillings, residual: weightOf(scale(state.left, -1), rounding) };
}

type Sought = { stock: Piece[]; mass: number; free: number; enough: number };
type Directed = Place & { direction: Vector };

function readPlaces(places: Place[]): Directed[] {
  if (places.length === 0) throw new RuleError('no-holes', 'There must be a place.', 'places');
  return places.map((place, i) => ({ ...place, direction: polar(1, readAngle(place.angle, `places[${i}].angle`)) }));
}

const towards = (place: Directed, wanted: Vector) => place.direction.re * wanted.re + place.direction.im * wanted.im;

function nearest(places: Directed[], wanted: Vector): Directed[] {
  return places
    .filter((place) => towards(place, wanted) > 0)
    .sort((a, b) => towards(b, wanted) - towards(a, wanted))
    .slice(0, NEAREST);
}

function after<S extends { left: Vector; fillings: Filling[]; mass: number; stock: Piece[] }>(
  state: S,
  places: Directed[],
  placed: Filling[],
): S {
  const direction = (name: string) => places.find((place) => place.name === name)!.direction;
  const used = (part: string) =>
    placed.flatMap(({ pieces }) => pieces).reduce((sum, each) => sum + (each.part === part ? each.count : 0), 0);
  return {
    ...state,
    left: placed.reduce((left, { place, mass }) => subtract(left, scale(direction(place), mass)), state.left),
    fillings: [...state.fillings, ...placed],
    mass: state.mass - placed.reduce((sum, { mass }) => sum + mass, 0),
    stock: state.stock.map((piece) => ({ ...piece, onHand: piece.onHand - used(piece.part) })),
  };
}

/** The best filling of one or two places; none where nothing comes nearer than leaving it. */
function bestOfTwo(wanted: Vector, places: Directed[], sought: Sought): { fillings: Filling[] } {
  const mixes = mixesOfAll(places, sought.stock, Math.min(sought.mass, 2 * length(wanted)));
  let best = {
    left: Math.max(length(wanted) * (1 - 1e-9), sought.enough),
    cost: 0,
    filled: undefined as Filled | undefined,
  };
  const none = nothing(sought.stock);
  for (const [i, a] of places.entries())
    for (const [j, b] of places.entries()) {
      if (j < i || (j > i && sought.free < 2)) continue;
      const seconds = j === i ? [none] : mixes[j]!;
      for (const first of mixes[i]!) {
        const rest = {
          re: wanted.re - first.mass * a.direction.re,
          im: wanted.im - first.mass * a.direction.im,
        };
        // What lies beside the second place no mass in it takes away.
        const beside = Math.abs(rest.re * b.direction.im - rest.im * b.direction.re);
        if (beside > best.left + 2e-9) continue;
        const near = firstFrom(seconds, towards(b, rest));
        // Nothing in the second place is always looked at, beside the three mixes on either side of what is left.
        for (let k = near > 3 ? near - 4 : 0; k < Math.min(near + 3, seconds.length); k += 1) {
          const second = seconds[k === near - 4 ? 0 : k]!;
          if (first.mass + second.mass > sought.mass + 1e-9) continue;
          const rests = Math.hypot(rest.re - second.mass * b.direction.re, rest.im - second.mass * b.direction.im);
          const left = Math.max(rests, sought.enough);
          if (left > best.left + 1e-9) continue;
          const cost = (first.mass + second.mass) * (1 + PIECE * (first.count + second.count));
          // The stock is asked last: it is what takes longest.
          if ((left > best.left - 1e-9 && cost >= best.cost) || !inStock(first, second, sought.stock)) continue;
          best = { left, cost, filled: [a, first, b, second] };
        }
      }
    }
  if (!best.filled) return { fillings: [] };
  const [a, first, b, second] = best.filled;
  const fillings = [fillingOf(a, first, sought), fillingOf(b, second, sought)];
  return { fillings: fillings.filter(({ mass }) => mass > 0) };
}

/** Most places have the same room: what fills one fills the other. */
function mixesOfAll(places: readonly Place[], stock: Piece[], cap: number): Mix[][] {
  const known = new Map<string, Mix[]>();
  return places.map((place) => {
    const room = `${place.mass} ${place.pieces}`;
    const mixed = known.get(room) ?? mixesOf(place, stock, cap);
    known.set(room, mixed);
    return mixed;
  });
}

type Filled = readonly [Directed, Mix, Directed, Mix];
const nothing = (stock: Piece[]): Mix => ({ mass: 0, count: 0, counts: stock.map(() => 0) });

function inStock(first: Mix, second: Mix, stock: Piece[]): boolean {
  for (let i = 0; i < stock.length; i += 1) if (first.counts[i]! + second.counts[i]! > stock[i]!.onHand) return false;
  return true;
}

function fillingOf({ name }: Place, { mass, counts }: Mix, { stock }: Sought): Filling {
  return {
    place: name,
    mass,
    pieces: counts.flatMap((count, i) => (count > 0 ? [{ part: stock[i]!.part, count }] : [])),
  };
}

/** Where the first mix of so much mass or more is. */
function firstFrom(mixes: readonly Mix[], mass: number): number {
  let [low, high] = [0, mixes.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (mixes[middle]!.mass < mass) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Every mass that whole pieces make in one place, each by the fewest pieces, lightest first. */
function mixesOf(place: Place, stock: Piece[], cap: number): Mix[] {
  const most = Math.min(place.mass, cap) + 1e-9;
  let byMass = new Map<number, Mix>([[0, nothing(stock)]]);
  for (const [i, { mass, onHand }] of stock.entries()) {
    const next = new Map(byMass);
    for (const mix of byMass.values())
      for (let count = 1; count <= Math.min(onHand, place.pieces); count += 1) {
        const [heavier, pieces] = [mix.mass + count * mass, mix.count + count];
        if (heavier > most || pieces > place.pieces) break;
        const key = Math.round(heavier * 1e6);
        const known = next.get(key);
        if (known && known.count <= pieces) continue;
        next.set(key, { mass: heavier, count: pieces, counts: mix.counts.map((n, k) => (k === i ? count : n)) });
      }
    byMass = next;
  }
  return [...byMass.values()].sort((a, b) => a.mass - b.mass).slice(0, MOST_FILLINGS);
}
