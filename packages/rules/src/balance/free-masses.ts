import type { Hole } from './holes.ts';
import { length, polar, subtract, type Vector } from './vector.ts';

const dot = (a: Vector, b: Vector) => a.re * b.re + a.im * b.im;
const cross = (a: Vector, b: Vector) => a.re * b.im - a.im * b.re;

/**
 * Masses of 0 … most in each hole whose sum is the wanted vector with the least total mass, or comes nearest to it.
 *
 * Least mass is a linear programme with two equations: at its optimum the holes between two "end" holes are full, the
 * others empty, and only the ends are partly filled. Out of reach, the nearest sum lies on the border of what can be
 * reached: all holes on one side of a line full, one or none on the line partly filled.
 */
export function placeFreely(wanted: Vector, holes: Hole[], most: number): number[] {
  const empty = holes.map(() => 0);
  if (length(wanted) === 0 || most === 0) return empty;
  return lightestExact(wanted, holes, most) ?? nearest(wanted, holes, most);
}

function lightestExact(wanted: Vector, holes: Hole[], most: number): number[] | undefined {
  let best: number[] | undefined;
  let least = Infinity;
  for (let start = 0; start < holes.length; start += 1) {
    for (let span = 0; span < holes.length; span += 1) {
      // Without a limit nothing between the ends is ever full, so only neighbours (or one hole) can be the ends.
      if (most === Infinity && span > 1) break;
      const masses = arc(wanted, holes, { start, span, most });
      const total = masses?.reduce((sum, mass) => sum + mass, 0) ?? Infinity;
      if (total >= least * (1 - 1e-12)) continue;
      best = masses;
      least = total;
    }
  }
  return best;
}

/** Holes strictly between start and start + span are full; the two ends carry what is left, if they can. */
function arc(wanted: Vector, holes: Hole[], { start, span, most }: { start: number; span: number; most: number }) {
  const masses = holes.map(() => 0);
  let rest = wanted;
  for (let i = 1; i < span; i += 1) {
    const hole = (start + i) % holes.length;
    masses[hole] = most;
    rest = subtract(rest, polar(most, holes[hole]!.angle));
  }
  const end = (start + span) % holes.length;
  const [a, b] = [holes[start]!.direction, holes[end]!.direction];
  const turn = cross(a, b);
  const [atStart, atEnd] = Math.abs(turn) < 1e-9 ? [dot(rest, a), 0] : [cross(rest, b) / turn, cross(a, rest) / turn];
  const slack = 1e-12 * length(wanted);
  if (Math.abs(turn) < 1e-9 && Math.abs(cross(a, rest)) > slack) return undefined;
  if (Math.min(atStart, atEnd) < -slack || Math.max(atStart, atEnd) > most + slack) return undefined;
  masses[start] = Math.min(most, Math.max(0, atStart));
  if (end !== start) masses[end] = Math.min(most, Math.max(0, atEnd));
  return masses;
}

function nearest(wanted: Vector, holes: Hole[], most: number): number[] {
  let best = holes.map(() => 0);
  let least = length(wanted);
  for (const [edge, { direction }] of holes.entries()) {
    for (const side of [1, -1]) {
      const full = most === Infinity ? [] : holes.map((other) => side * cross(direction, other.direction) > 1e-9);
      const masses = holes.map((_, i) => (full[i] ? most : 0));
      const rest = holes.reduce((left, hole, i) => subtract(left, polar(masses[i]!, hole.angle)), wanted);
      // The edge hole, and one straight across on the same line, take what of the rest lies along them.
      const along = dot(rest, direction);
      const opposite = holes.findIndex((other) => dot(direction, other.direction) < -1 + 1e-12);
      if (along >= 0) masses[edge] = Math.min(most, along);
      else if (opposite >= 0) masses[opposite] = Math.min(most, -along);
      const apart = length(holes.reduce((left, hole, i) => subtract(left, polar(masses[i]!, hole.angle)), wanted));
      if (apart >= least) continue;
      best = masses;
      least = apart;
    }
  }
  return best;
}
