import { add, scale, type Vector, ZERO } from './vector.ts';

export type Hole = { angle: number; direction: Vector };

export function sumOf(holes: Hole[], masses: number[]): Vector {
  return holes.reduce((sum, { direction }, i) => add(sum, scale(direction, masses[i]!)), ZERO);
}
