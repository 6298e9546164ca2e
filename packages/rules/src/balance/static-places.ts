import { RuleError } from '../errors/index.ts';
import { angleOf, polar, readAngle, type Vector } from './vector.ts';

/** A place for static weights: angle in degrees clockwise from blade 1 as seen from the front, room in pieces and in stack. */
export interface StaticPlace {
  readonly name: string;
  readonly angle: number;
  readonly radius: number;
  readonly pieces: number;
  /** The longest stack; undefined where the manual has none. */
  readonly stack?: number | undefined;
}

/** A piece the manual allows: mass and thickness of one. */
export interface StaticPiece {
  readonly part: string;
  readonly mass: number;
  readonly thickness: number;
}

/** What one place may take: how many of each piece, the moment they make and their stack. */
export interface StaticOption {
  readonly moment: number;
  readonly counts: readonly number[];
  readonly pieces: number;
  readonly stack: number;
}

export interface OpenPlace extends StaticPlace {
  readonly direction: Vector;
}

/** Reads places and pieces. @throws RuleError not-an-angle, not-a-place, not-a-piece, same-place-twice */
export function readPlaces(places: readonly StaticPlace[], hardware: readonly StaticPiece[]): OpenPlace[] {
  hardware.forEach(({ mass, thickness }, i) => {
    if (Number.isFinite(mass) && mass > 0 && Number.isFinite(thickness) && thickness >= 0) return;
    throw new RuleError('not-a-piece', 'A piece has a mass above 0 and a thickness.', `hardware[${i}]`);
  });
  return places.map((place, i) => {
    const { name, radius, pieces, stack } = place;
    const isPlace = radius > 0 && Number.isFinite(radius) && Number.isInteger(pieces) && pieces >= 0;
    if (!isPlace || (stack !== undefined && !(stack >= 0)))
      throw new RuleError('not-a-place', 'A place has a radius above 0 and room for pieces.', `places[${i}]`);
    if (places.findIndex((other) => other.name === name) < i)
      throw new RuleError('same-place-twice', 'This place is listed already.', `places[${i}].name`);
    return { ...place, direction: polar(1, readAngle(place.angle, `places[${i}].angle`)) };
  });
}

/** Every moment up to `most` that whole pieces make in one place, each by the fewest pieces, lightest first. */
export function optionsOf(place: StaticPlace, hardware: readonly StaticPiece[], most: number): StaticOption[] {
  const none: StaticOption = { moment: 0, counts: hardware.map(() => 0), pieces: 0, stack: 0 };
  const room = (place.stack ?? Infinity) * (1 + 1e-9);
  let known = new Map([['', none]]);
  for (const [i, { mass, thickness }] of hardware.entries()) {
    const next = new Map(known);
    for (const option of known.values())
      for (let count = 1; option.pieces + count <= place.pieces; count += 1) {
        const moment = option.moment + count * mass * place.radius;
        const stack = option.stack + count * thickness;
        if (moment > most || stack > room) break;
        const pieces = option.pieces + count;
        // Of what makes the same moment a shorter stack leaves room for more.
        const key = `${Math.round(moment * 1e6)} ${Math.round(stack * 1e6)}`;
        const other = next.get(key);
        if (other && other.pieces <= pieces) continue;
        const counts = option.counts.map((before, k) => (k === i ? count : before));
        next.set(key, { moment, counts, pieces, stack });
      }
    known = next;
  }
  const all = [...known.values()].sort((a, b) => a.moment - b.moment || a.pieces - b.pieces);
  return all.filter(({ moment }, i) => i === 0 || moment - all[i - 1]!.moment > 1e-9 * moment);
}

/** How far a place lies from a direction, 0 to 180 degrees. */
export function awayFrom({ direction }: OpenPlace, wanted: Vector): number {
  const apart = Math.abs(angleOf(direction) - angleOf(wanted));
  return Math.min(apart, 360 - apart);
}
