import { z } from 'zod';
import { amongBlades } from '../manuals/measures.ts';
import { dimension, partClass } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { carriedKind } from '../units/carried.ts';
import { changed, date, decimal, id, instant, line, signature } from '../values.ts';
import { difference } from './traveler-shapes.ts';

const reading = z.object({ value: decimal, pass: z.boolean(), signedAt: instant }).meta({ id: 'DimensionReading' });

const dimensionRow = z
  .object({
    dimension,
    station: decimal.nullable(),
    zone: z.string().nullable(),
    name: z.string(),
    unit: z.string(),
    low: decimal.nullable(),
    high: decimal.nullable(),
    basis: z.string().nullable(),
    /** Measured in evaluation, before anything was taken off. */
    asFound: reading.nullable(),
    /** The newest reading of a later phase. */
    afterRepair: reading.nullable(),
    /** What this visit took off; null until measured before and after. */
    removed: decimal.nullable(),
    /** As it left on earlier visits, oldest first. */
    past: z.array(z.object({ on: date, workOrderNumber: z.string(), value: decimal })),
    /** An estimate of overhauls of material left, for what shrinks at each one; null for what does not. */
    remaining: z.object({ overhauls: z.union([z.int(), z.literal('unknown')]), basis: z.string() }).nullable(),
  })
  .meta({ id: 'DimensionRow' });

const carried = z
  .object({
    itemId: id,
    kind: carriedKind,
    place: z.string(),
    value: z.string(),
    basis: z.string(),
    recordedAt: instant,
    /** Recorded on this visit. */
    isNow: z.boolean(),
  })
  .meta({ id: 'CarriedFact' });

const measuredPart = z
  .object({
    travelerId: id,
    itemId: id,
    partClass,
    position: z.string(),
    serial: z.string(),
    disposition: z.enum(['serviceable', 'repair', 'reject']).nullable(),
    rows: z.array(dimensionRow),
    /** Corrosion found on it, by area. */
    corrosion: z.array(z.object({ findingId: id, number: z.string(), area: z.string(), class: z.string() })),
    oversizes: z.array(z.object({ place: z.string(), steps: z.array(z.string()) })),
  })
  .meta({ id: 'MeasuredPart' });

const spread = z
  .object({
    dimension,
    station: decimal.nullable(),
    most: decimal,
    among: amongBlades,
    /** What each blade is held against, where that is a master. */
    master: decimal.nullable(),
    widest: z.object({ spread: decimal, between: z.array(z.string()) }).nullable(),
    missing: z.array(z.string()),
    verdict: z.enum(['pass', 'fail', 'incomplete']),
  })
  .meta({ id: 'SetSpread' });

export const carriedBasis = z.enum(['as-found', 'kept', 'new', 'measured']).meta({ id: 'CarriedBasis' });

/** Parts of one unit by their dimensions, as a set, and what they carry from visit to visit. */
export const dimensionOperations = {
  workOrderDimensions: read({
    id: 'work-order-dimensions',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/dimensions',
    access: 'signed-in',
    summary:
      'What was measured on each part of a unit, before and after repair, against limits and earlier visits; the blades as a set; what the parts carry',
    input: z.strictObject({ workOrderId: id }),
    output: z
      .object({
        parts: z.array(measuredPart),
        spreads: z.array(spread),
        /** Questions of the set that nobody has answered: each holds the build. */
        questions: z.array(
          z.object({
            findingId: id,
            number: z.string(),
            position: z.string(),
            mates: z.array(
              z.object({ travelerId: id, position: z.string(), serial: z.string(), isOpposite: z.boolean() }),
            ),
          }),
        ),
        decisions: z.array(
          z.object({
            number: z.string(),
            position: z.string(),
            reason: z.string(),
            decidedAt: instant,
            mates: z.array(z.object({ position: z.string(), stays: z.boolean() })),
          }),
        ),
        /** Areas where one blade corroded and others have no finding of it: corrosion and wear come together. */
        alike: z.array(z.object({ area: z.string(), found: z.array(z.string()), lookAt: z.array(z.string()) })),
        diameter: z.object({
          current: decimal.nullable(),
          designation: z.string().nullable(),
          shortenTo: decimal.nullable(),
          leastEligible: decimal.nullable(),
          allowed: z.array(z.object({ diameter: decimal, designation: z.string() })),
        }),
        carried: z.array(carried),
        matchedSets: z.array(
          z.object({ place: z.string(), pieces: z.int(), found: z.string().nullable(), built: z.string().nullable() }),
        ),
        /** What still holds the build, in sentences. */
        open: z.array(z.string()),
      })
      .meta({ id: 'WorkOrderDimensions' }),
  }),
  recordCarried: command({
    id: 'record-carried',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/carried',
    access: ['technician', 'inspector'],
    summary:
      'Record what a part carries from visit to visit: the current diameter, an oversize step, which matched set is where. Limits of open steps follow',
    input: z.strictObject({
      workOrderId: id,
      itemId: id,
      kind: carriedKind,
      /** The measure of an oversize step, the position of a matched set; empty for the diameter. */
      place: z.string().trim().max(200).default(''),
      value: z.string().trim().min(1).max(40),
      basis: carriedBasis,
    }),
    output: changed.extend({ steps: z.int() }).meta({ id: 'CarriedRecorded' }),
    touches: ['units', 'releases'],
    problems: [
      'not-of-this-unit',
      'diameter-not-allowed',
      'oversize-unknown',
      'set-unknown',
      'set-mixed',
      'limits-missing',
      'wrong-state',
    ],
  }),
  shorteningDifferences: read({
    id: 'shortening-differences',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/shortening-differences',
    access: 'signed-in',
    summary: 'What shortening every blade to a diameter would change: designation, steps and limits, consent',
    input: z.strictObject({ workOrderId: id, diameter: decimal }),
    output: z
      .object({ differences: z.array(difference), reopensBuild: z.boolean() })
      .meta({ id: 'ShorteningDifferences' }),
    problems: ['diameter-not-allowed', 'diameter-not-eligible', 'route-missing', 'limits-missing'],
  }),
  shortenBlades: command({
    id: 'shorten-blades',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/shortening',
    access: ['inspector'],
    versioned: true,
    summary:
      'Decide to shorten every blade of the propeller to a diameter of the manual: steps, limits and designation follow, and what was agreed is offered anew',
    input: z.strictObject({ workOrderId: id, diameter: decimal, reason: line, signature }),
    output: changed
      .extend({ differences: z.array(difference), reopensBuild: z.boolean(), designation: z.string() })
      .meta({ id: 'BladesShortened' }),
    signs:
      'Every blade of this propeller is shortened alike to the named diameter, which the manual allows and the installation is approved with; it is a major repair',
    touches: ['quotes', 'kits', 'releases'],
    problems: [
      'diameter-not-allowed',
      'diameter-not-eligible',
      'route-missing',
      'limits-missing',
      'revision-superseded',
      'wrong-state',
      'work-held',
      'not-authorised',
    ],
  }),
} as const;

export type WorkOrderDimensions = z.output<typeof dimensionOperations.workOrderDimensions.output>;
export type MeasuredPart = z.output<typeof measuredPart>;
