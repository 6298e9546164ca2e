import { z } from 'zod';
import { disposition } from '../findings/areas.ts';
import { decimal, line } from '../values.ts';
import { chordParts, corrosionClass, dimension, partClass, roundingMethod, surfaces } from './words.ts';

const sides = { low: decimal.optional(), high: decimal.optional() };
type Sides = { low?: string | undefined; high?: string | undefined };
const hasSide = ({ low, high }: Sides) => low !== undefined || high !== undefined;
const inOrder = ({ low, high }: Sides) => low === undefined || high === undefined || Number(low) <= Number(high);
const noSide = { message: 'Give a low or a high limit' };
const swapped = { message: 'The low limit is above the high one', path: ['low'] };

/** A field of a composite blade that is tapped as one: from station to station, on one side, along one part of the chord. */
export const tapZone = z
  .strictObject({
    name: z.string().trim().min(1).max(20),
    surface: z.enum(surfaces),
    chord: z.enum(chordParts),
    from: decimal,
    to: decimal,
  })
  .refine(({ from, to }) => Number(from) < Number(to), { message: 'The zone ends before it begins', path: ['to'] })
  .meta({ id: 'TapZone' });

/** Limits of a measure for one band of the propeller's current diameter; both ends belong to it. */
const diameterBand = z
  .strictObject({ from: decimal, to: decimal, ...sides })
  .refine(hasSide, noSide)
  .refine(inOrder, swapped);
/** Limits of a measure at a step above the base size. */
const oversizeStep = z
  .strictObject({ step: z.string().trim().min(1).max(20), ...sides })
  .refine(hasSide, noSide)
  .refine(inOrder, swapped);
/** The most that is allowed goes by a chart against another measure of the same step. */
export const chart = z
  .strictObject({
    by: line,
    points: z
      .array(z.strictObject({ at: decimal, most: decimal }))
      .min(2, 'A chart has two points at least')
      .max(40)
      .refine((points) => points.every(({ at }, index) => index === 0 || Number(at) > Number(points[index - 1]?.at)), {
        message: 'Distances of a chart rise from point to point',
      }),
  })
  .meta({ id: 'LimitChart' });

/**
 * A value to measure, in its unit, with inclusive limits as the manual prints them: fixed, by the current diameter, by the oversize step
 * the part has, or by a chart against another measure of the step. A dimension without any is recorded.
 */
export const measureSpec = z
  .strictObject({
    name: line,
    unit: z.string().trim().min(1).max(20),
    decimals: z.int().min(-3).max(6),
    method: roundingMethod,
    ...sides,
    /** What it is, where a part is followed by it from visit to visit. */
    dimension: dimension.optional(),
    /** Blade station: distance from the hub centre, in the manual's unit. */
    station: decimal.optional(),
    zone: tapZone.optional(),
    byDiameter: z.array(diameterBand).max(12).default([]),
    oversizes: z.array(oversizeStep).max(12).default([]),
    chart: chart.optional(),
  })
  .refine(inOrder, swapped)
  .refine(
    (given) =>
      hasSide(given) || given.byDiameter.length > 0 || given.chart !== undefined || given.dimension !== undefined,
    noSide,
  )
  .refine((given) => given.chart === undefined || (!hasSide(given) && given.byDiameter.length === 0), {
    message: 'A chart takes the place of other limits',
    path: ['chart'],
  })
  .meta({ id: 'MeasureSpec' });

/** A diameter the manual allows, and what the propeller is then called. The first is the design's. */
const bladeDiameter = z.strictObject({ diameter: decimal, designation: z.string().trim().min(1).max(40) });
/** Each blade against every other, against the one across the hub, or against the value of a master. */
export const amongBlades = z.enum(['set', 'opposite', 'master']).meta({ id: 'AmongBlades' });
/** How far blades of one set may differ. */
const setSpread = z
  .strictObject({
    dimension,
    station: decimal.optional(),
    most: decimal,
    among: amongBlades,
    /** What the master has, in the unit of the measure. */
    master: decimal.optional(),
  })
  .refine(({ among, master }) => (among === 'master') === (master !== undefined), {
    message: 'A master has a value, and only a master',
    path: ['master'],
  });
/** What may be decided on corrosion of a class in an area. */
const corrosionRule = z.strictObject({
  partClass,
  area: z.string().trim().min(1).max(40),
  class: corrosionClass,
  may: z.array(disposition).min(1).max(3),
});
/** Parts that stay together from visit to visit: race halves, split rings. */
const matchedSet = z.strictObject({ position: line, pieces: z.int().min(2).max(20) });

/** What a revision says of blades as a set, of corrosion and of parts that stay together. */
export const bladeRules = z
  .strictObject({
    diameters: z.array(bladeDiameter).max(12).default([]),
    setSpreads: z.array(setSpread).max(40).default([]),
    corrosion: z.array(corrosionRule).max(80).default([]),
    matchedSets: z.array(matchedSet).max(40).default([]),
  })
  .meta({ id: 'BladeRules' });
export type BladeRules = z.output<typeof bladeRules>;
export const noBladeRules: BladeRules = { diameters: [], setSpreads: [], corrosion: [], matchedSets: [] };
export const stripKinds = ['N', 'A', 'C'] as const;
/** One area of a peened part: the strip, the band its arc height must lie in, and where strips sit on the test blade. */
const peenedArea = z
  .strictObject({
    name: line,
    strip: z.enum(stripKinds),
    low: decimal,
    high: decimal,
    unit: z.string().trim().min(1).max(20),
    /** Blade stations at which a strip sits. */
    positions: z.array(decimal).max(20).default([]),
  })
  .refine(({ low, high }) => Number(low) <= Number(high), swapped);
/** What a peened step asks for: it is signed in a lot between opening and closing strips, never alone. */
export const peeningSpec = z
  .strictObject({
    mediaSize: line,
    /** In percent, each area. */
    coverage: z.int().min(90).max(400),
    areas: z.array(peenedArea).min(1).max(8),
  })
  .meta({ id: 'PeeningSpec' });
export type PeeningSpec = z.output<typeof peeningSpec>;

export type MeasureSpec = z.output<typeof measureSpec>;
export type TapZone = z.output<typeof tapZone>;
export type Chart = z.output<typeof chart>;
