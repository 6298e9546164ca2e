import { z } from 'zod';
import type { PartClass } from '../manuals/words.ts';
import { chordParts, surfaces } from '../manuals/words.ts';
import { decimal } from '../values.ts';

/** On a blade: which side, how far from the hub centre, where along the chord. */
const onBlade = z.strictObject({
  on: z.literal('blade'),
  surface: z.enum(surfaces),
  station: decimal,
  chord: z.enum(chordParts),
});

export const hubFaces = ['front', 'rear', 'side'] as const;
/** On a hub: which face, the direction seen from the front with blade 1 up, and how far out. */
const onHub = z.strictObject({
  on: z.literal('hub'),
  face: z.enum(hubFaces),
  degrees: z.int().min(0).max(359),
  ring: z.enum(['inner', 'middle', 'outer']),
});

export const findingSpot = z.discriminatedUnion('on', [onBlade, onHub]).meta({ id: 'FindingSpot' });
export type FindingSpot = z.output<typeof findingSpot>;

/** Which drawing a class of part has; none where there is nothing to pick on. */
export function drawingOf(partClass: PartClass): FindingSpot['on'] | null {
  if (partClass === 'blade') return 'blade';
  return partClass === 'hub' ? 'hub' : null;
}

/** A spot in the words of the floor. */
export function spotText(spot: FindingSpot): string {
  if (spot.on === 'blade') {
    const chord = spot.chord === 'middle' ? 'mid chord' : `${spot.chord} edge`;
    return `${spot.surface === 'face' ? 'face' : 'camber'} side, station ${spot.station}, ${chord}`;
  }
  return `${spot.face} face, ${spot.degrees}° from blade 1, ${spot.ring} ring`;
}
