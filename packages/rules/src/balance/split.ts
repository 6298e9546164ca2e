import { RuleError } from '../errors/index.ts';
import { placeFreely } from './free-masses.ts';
import { type Hole, sumOf } from './holes.ts';
import { normal, polar, readAngle, readWeight, subtract, type Weight, weightOf } from './vector.ts';
import { placeWashers } from './washers.ts';

/**
 * A weight that falls between the holes, placed in them. Masses are never negative and never above `maxPerHole`.
 *
 * Without `washer` the residual is the least there is, and of all such placings the one of least total mass: two
 * neighbouring holes where they suffice, more when they are full. With `washer` every mass is a whole multiple of it; any
 * two holes are tried in every count, and more holes only where two leave over half a washer. Residual: what is placed
 * minus what was asked for, as a vector; a residual that matters is for the caller to refuse.
 * Masses in any one unit; degrees. Caution: number, size and place of weights are limited by the current approved manual.
 * Source: resolution of a vector into two directions; the whole washers are a search, common practice, no source.
 *
 * @throws RuleError not-an-amount, not-an-angle, no-holes, same-hole-twice, not-a-limit, not-a-washer
 * @example 10 @ 20 in holes 0 and 30 → 3.473 and 6.840
 */
export function splitBetween(
  weight: Weight,
  holes: number[],
  options: { maxPerHole?: number | undefined; washer?: number | undefined } = {},
): { weights: Weight[]; residual: Weight } {
  const wanted = readWeight(weight, 'weight');
  const places = readHoles(holes);
  const most = options.maxPerHole ?? Infinity;
  if (!(most >= 0)) throw new RuleError('not-a-limit', 'The most per hole is a mass, 0 or more.', 'options.maxPerHole');
  const found =
    options.washer === undefined
      ? placeFreely(wanted, places, most)
      : placeWashers(wanted, places, { most, washer: readWasher(options.washer, weight.mass) });
  // The rounding of a full hole's neighbour is no weight to fit.
  const masses = found.map((mass) => (mass > 1e-12 * weight.mass ? mass : 0));
  const placed = sumOf(places, masses);
  return {
    weights: places.flatMap(({ angle }, i) => (masses[i]! > 0 ? [{ mass: masses[i]!, angle }] : [])),
    residual: weightOf(subtract(placed, wanted), 1e-12 * (weight.mass + masses.reduce((sum, mass) => sum + mass, 0))),
  };
}

function readHoles(holes: number[]): Hole[] {
  if (holes.length === 0) throw new RuleError('no-holes', 'There must be a hole.', 'holes');
  const angles = holes.map((angle, i) => normal(readAngle(angle, `holes[${i}]`)));
  const twice = angles.findIndex((angle, i) => angles.indexOf(angle) < i);
  if (twice >= 0) throw new RuleError('same-hole-twice', 'This hole is listed already.', `holes[${twice}]`);
  return angles.map((angle) => ({ angle, direction: polar(1, angle) })).sort((a, b) => a.angle - b.angle);
}

/** More washers than this are not a balance weight but a wrong unit. */
const MOST_WASHERS = 2000;

function readWasher(washer: number, mass: number): number {
  if (Number.isFinite(washer) && washer > 0 && mass / washer <= MOST_WASHERS) return washer;
  const rule = `A washer is a mass above 0, and at most ${MOST_WASHERS} make the weight.`;
  throw new RuleError('not-a-washer', rule, 'options.washer');
}
