import { type FieldPlane, placesOf, planesOf } from '@hubwright/contracts/field-balance/planes';
import type { FieldBalanceData, FieldTrial, StandingWeight } from '@hubwright/contracts/field-balance/shapes';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import type { Placed, WholeBalance } from './field-balance.ts';
import { dataOf, setUpOf } from './field-balance.ts';

/** Everything that stands on the propeller: what was found there and stays, and what this order fitted. */
export function standingOf(balance: WholeBalance): StandingWeight[] {
  const setUp = setUpOf(balance);
  if (!balance.spec || !setUp) return [];
  const data = dataOf(balance.spec);
  const found = setUp.sheet.found
    .filter(({ stays }) => stays)
    .map(({ place, mass }) => ({
      ...{ ...where(data, place), mass: Number(mass), pieces: 1, found: true },
      ...{ partNumber: null, lotCode: null },
    }));
  return [...found, ...fittedOf(balance, data)];
}

function fittedOf(balance: WholeBalance, data: FieldBalanceData): StandingWeight[] {
  const sums = new Map<string, StandingWeight>();
  for (const { place, lot, pieces, mass } of balance.weights) {
    const key = `${place} ${lot.code}`;
    const known = sums.get(key) ?? { pieces: 0, mass: 0 };
    sums.set(key, {
      ...{ ...where(data, place), partNumber: lot.part.number, lotCode: lot.code, found: false },
      ...{ pieces: known.pieces + pieces, mass: rounded(known.mass + pieces * Number(mass)) },
    });
  }
  return [...sums.values()]
    .filter(({ pieces }) => pieces > 0)
    .sort((a, b) => planeOf(data, a.place) - planeOf(data, b.place) || a.angle - b.angle);
}

function where(data: FieldBalanceData, place: string): Pick<StandingWeight, 'place' | 'plane' | 'angle'> {
  const known = placeIn(data, place);
  return { place, ...(known?.planeName ? { plane: known.planeName } : {}), angle: known?.angle ?? 0 };
}

/** What this order fitted, as weights in places: what a run is read with. */
export function ownOf(standing: readonly StandingWeight[]): Placed[] {
  const own = standing.filter(({ found }) => !found);
  return [...new Set(own.map(({ place }) => place))].sort().map((place) => {
    const here = own.filter((weight) => weight.place === place);
    return { place, angle: here[0]?.angle ?? 0, mass: rounded(here.reduce((sum, { mass }) => sum + mass, 0)) };
  });
}

/** To a millionth of a gram, so that sums of decimals compare. */
const rounded = (mass: number) => Math.round(mass * 1e6) / 1e6;

/** A place by its name: its angle, and which plane it is in. */
export function placeIn(data: FieldBalanceData, name: string) {
  const place = placesOf(planesOf(data)).find((one) => one.name === name);
  return place && { ...place, angle: Number(place.angle), plane: place.plane === 0 ? (0 as const) : (1 as const) };
}

/** Which plane a place is in: 0 or 1. */
export const planeOf = (data: FieldBalanceData, place: string): 0 | 1 => placeIn(data, place)?.plane ?? 0;

/** Where a trial weight sits. Throws `place-unknown`. */
export function trialAt(data: FieldBalanceData, trial: FieldTrial): { angle: number; plane: 0 | 1 } {
  const refuse = (pointer: string, detail: string): never => {
    throw new Problem('place-unknown', detail, {}, [{ pointer, detail }]);
  };
  if (trial.place !== undefined)
    return placeIn(data, trial.place) ?? refuse('/trial/place', `There is no place ${trial.place}`);
  const planes = planesOf(data);
  const plane = trial.plane === undefined ? 0 : planes.findIndex(({ planeName }) => planeName === trial.plane);
  if (plane < 0) refuse('/trial/plane', `There is no plane ${trial.plane}`);
  if (trial.angle === undefined) refuse('/trial/place', 'Name a place or an angle');
  return { angle: Number(trial.angle), plane: plane === 0 ? 0 : 1 };
}

interface Load {
  readonly place: string;
  readonly pieces: number;
  readonly mass: number;
}

type Refuse = (type: 'place-unknown' | 'too-heavy', detail: string) => never;

/** Throws `place-unknown` or `too-heavy`: mass and pieces of each place, places and mass of each plane. `at` names the field. */
export function refuseTooHeavy(data: FieldBalanceData, loads: readonly Load[], at: string): void {
  const refuse: Refuse = (type, detail) => {
    const pointed: Pointed = { pointer: at, detail };
    throw new Problem(type, detail, {}, [pointed]);
  };
  const unknown = loads.find(({ place }) => placeIn(data, place) === undefined);
  if (unknown) refuse('place-unknown', `There is no place ${unknown.place}`);
  for (const [plane, limits] of planesOf(data).entries())
    refusePlane(
      limits,
      loads.filter(({ place }) => planeOf(data, place) === plane),
      refuse,
    );
}

function refusePlane(limits: FieldPlane, loads: readonly Load[], refuse: Refuse): void {
  const { planeName, mostPerPlace, mostInAll, mostPieces, mostPlaces } = limits;
  const names = [...new Set(loads.map(({ place }) => place))];
  for (const name of names) {
    const here = loads.filter(({ place }) => place === name);
    const mass = rounded(here.reduce((sum, one) => sum + one.mass, 0));
    const pieces = here.reduce((sum, one) => sum + one.pieces, 0);
    if (mass > Number(mostPerPlace)) refuse('too-heavy', `${name}: ${mass} g; ${mostPerPlace} g are allowed`);
    if (pieces > mostPieces) refuse('too-heavy', `${name}: ${pieces} pieces; ${mostPieces} are allowed`);
  }
  const of = planeName === null ? '' : `${planeName}: `;
  if (names.length > mostPlaces) refuse('too-heavy', `${of}${names.length} places; ${mostPlaces} may be used`);
  const all = rounded(loads.reduce((sum, { mass }) => sum + mass, 0));
  if (all > Number(mostInAll)) refuse('too-heavy', `${of}${all} g in all; ${mostInAll} g are allowed`);
}
