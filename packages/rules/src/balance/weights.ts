import { RuleError } from '../errors/index.ts';
import { add, readAmount, readWeight, type Weight, weightOf, ZERO } from './vector.ts';

/**
 * One weight that acts as all of them together. Nothing left is mass 0 at angle 0.
 *
 * Source: vector addition. @throws RuleError not-an-amount, not-an-angle
 * @example combine([{ mass: 20, angle: 30 }, { mass: 20, angle: 150 }]) → 20 @ 90
 */
export function combine(weights: Weight[]): Weight {
  const sum = weights.map((weight, i) => readWeight(weight, `weights[${i}]`)).reduce(add, ZERO);
  // Weights that cancel leave the rounding of their sum, which has no direction worth telling.
  return weightOf(sum, 1e-12 * weights.reduce((total, { mass }) => total + mass, 0));
}

/**
 * The mass that acts the same at another radius. Source: unbalance is mass times radius (ISO 21940-2).
 *
 * @throws RuleError not-an-amount, not-a-radius
 * @example moveRadius(20, 8, 6.5) → 24.615…
 */
export function moveRadius(mass: number, fromRadius: number, toRadius: number): number {
  readAmount(mass, 'mass');
  for (const [name, radius] of Object.entries({ fromRadius, toRadius })) {
    if (!(Number.isFinite(radius) && radius > 0)) throw new RuleError('not-a-radius', 'A radius is above 0.', name);
  }
  return (mass * fromRadius) / toRadius;
}

/**
 * Permissible residual unbalance of the whole rotor in g·mm, from the grade G in mm/s, mass in kg and speed in rpm:
 * 1000·G·m / ω, ω = 2π·n / 60. Which grade applies is for the manual; G 6.3 is not a default.
 * Source: ISO 21940-11:2016 (formerly ISO 1940-1), balance quality grades.
 *
 * @throws RuleError not-above-zero
 * @example permissibleUnbalance({ grade: 6.3, mass: 35, rpm: 2700 }) → 779.859…
 */
export function permissibleUnbalance(input: { grade: number; mass: number; rpm: number }): number {
  for (const name of ['grade', 'mass', 'rpm'] as const) {
    if (Number.isFinite(input[name]) && input[name] > 0) continue;
    throw new RuleError('not-above-zero', 'Grade, mass and speed are above 0.', name);
  }
  return (60_000 / (2 * Math.PI)) * ((input.grade * input.mass) / input.rpm);
}
