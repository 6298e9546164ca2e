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
      ...{ place, angle: angleOf(data, place) ?? 0, mass: Number(mass), pieces: 1, found: true },
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
      ...{ place, angle: angleOf(data, place) ?? 0, partNumber: lot.part.number, lotCode: lot.code, found: false },
      ...{ pieces: known.pieces + pieces, mass: rounded(known.mass + pieces * Number(mass)) },
    });
  }
  return [...sums.values()].filter(({ pieces }) => pieces > 0).sort((a, b) => a.angle - b.angle);
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

export function angleOf({ places }: FieldBalanceData, name: string): number | undefined {
  const place = places.find((one) => one.name === name);
  return place && Number(place.angle);
}

/** Where a trial weight sits. Throws `place-unknown`. */
export function trialAt(data: FieldBalanceData, { place, angle }: FieldTrial): number {
  const known = place === undefined ? Number(angle ?? Number.NaN) : angleOf(data, place);
  if (known !== undefined && Number.isFinite(known)) return known;
  const detail = place === undefined ? 'Name a place or an angle' : `There is no place ${place}`;
  throw new Problem('place-unknown', detail, {}, [{ pointer: '/trial/place', detail }]);
}

interface Load {
  readonly place: string;
  readonly pieces: number;
  readonly mass: number;
}

/** Throws `place-unknown` or `too-heavy`: mass and pieces of each place, places and mass of all. `at` names the field. */
export function refuseTooHeavy(data: FieldBalanceData, loads: readonly Load[], at: string): void {
  const refuse = (type: 'place-unknown' | 'too-heavy', detail: string): never => {
    const pointed: Pointed = { pointer: at, detail };
    throw new Problem(type, detail, {}, [pointed]);
  };
  const names = [...new Set(loads.map(({ place }) => place))];
  for (const name of names) {
    if (angleOf(data, name) === undefined) refuse('place-unknown', `There is no place ${name}`);
    const here = loads.filter(({ place }) => place === name);
    const mass = rounded(here.reduce((sum, one) => sum + one.mass, 0));
    const pieces = here.reduce((sum, one) => sum + one.pieces, 0);
    if (mass > Number(data.mostPerPlace)) refuse('too-heavy', `${name}: ${mass} g; ${data.mostPerPlace} g are allowed`);
    if (pieces > data.mostPieces) refuse('too-heavy', `${name}: ${pieces} pieces; ${data.mostPieces} are allowed`);
  }
  if (names.length > data.mostPlaces) refuse('too-heavy', `${names.length} places; ${data.mostPlaces} may be used`);
  const all = rounded(loads.reduce((sum, { mass }) => sum + mass, 0));
  if (all > Number(data.mostInAll)) refuse('too-heavy', `${all} g in all; ${data.mostInAll} g are allowed`);
}
