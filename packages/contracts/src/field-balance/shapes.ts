import { z } from 'zod';
import { date, decimal, id, instant, line, note } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';

export const fieldStates = [
  'planned',
  'set-up',
  'runs',
  'weights-fitted',
  'balanced',
  'released',
  'abandoned',
] as const;
export const fieldState = z.enum(fieldStates).meta({ id: 'FieldBalanceState' });
export type FieldState = (typeof fieldStates)[number];

/** Which way angles are counted, seen from the front of the propeller. */
export const countings = ['clockwise', 'counterclockwise'] as const;
export const counting = z.enum(countings).meta({ id: 'Counting' });

const amount = z.string().regex(/^\d{1,6}(\.\d{1,6})?$/, 'Write an amount such as 0.25');
const above = amount.refine((text) => Number(text) > 0, 'This is above 0');
/** Degrees, at least 0 and below 360. */
const degrees = z
  .string()
  .regex(/^\d{1,3}(\.\d{1,3})?$/, 'Degrees are 0 or more, below 360')
  .refine((text) => Number(text) < 360, 'Degrees are 0 or more, below 360');
const rpm = z.int().min(1).max(20_000);
const placeName = z.string().trim().min(1).max(20);

/** Places of one plane and what they may hold. */
const planeData = {
  places: z
    .array(z.strictObject({ name: placeName, angle: degrees }))
    .min(1)
    .max(48),
  radius: above,
  /** Grams in one place and in all; pieces in one place; places used. */
  mostPerPlace: above,
  mostInAll: above,
  mostPieces: z.int().min(1).max(20),
  mostPlaces: z.int().min(1).max(48),
};
const planeName = z.string().trim().min(1).max(40);

/** Places, limits and settings of a model, as its current approved document has them. */
export const specData = {
  /** The document, with its revision. */
  source: line,
  counting,
  ...planeData,
  /** What the plane is called; a model with two planes names both. */
  planeName: planeName.optional(),
  /** A second plane of places, with limits of its own. No place has the name of one in the other plane. */
  secondPlane: z.strictObject({ planeName, ...planeData }).optional(),
  radiusUnit: z.enum(['in', 'mm']),
  unit: z.string().trim().min(1).max(20),
  ranges: z
    .array(z.strictObject({ fromRpm: rpm, toRpm: rpm, limit: above, target: above }))
    .min(1)
    .max(10),
  /** By how much one reading differs from its like (root mean square), in the unit. */
  scatter: above,
  /** Knots. */
  mostWind: above,
};

const data = z.strictObject(specData);
export type FieldBalanceData = z.output<typeof data>;

const spec = z
  .object({
    ...specData,
    ...{ id, model: z.object({ id, designation: z.string(), bladeCount: z.int() }) },
    ...{ enteredBy: who, enteredAt: instant },
  })
  .meta({ id: 'FieldBalanceData' });
export const specRow = spec;

export const hardwareRow = z
  .object({
    part: z.object({ id, number: z.string(), description: z.string() }),
    /** Grams of one piece. */
    mass: decimal,
    enteredBy: who,
    lots: z.array(z.object({ code: z.string(), onHand: z.int() })),
  })
  .meta({ id: 'BalanceHardware' });

const sensorAxis = z.enum(['vertical', 'horizontal']);

/** Before any run. Each point is confirmed by itself. */
export const sheet = {
  procedure: line,
  /** Knots. */
  wind: amount,
  weather: line,
  tiedDown: z.literal(true),
  areaClear: z.literal(true),
  cowlingClosed: z.literal(true),
  brakesSet: z.literal(true),
  observerPosted: z.literal(true),
  sensorPlace: line,
  sensorAxis,
  /** With two sensors both planes of a model that has two are balanced; with one the first alone. */
  secondSensor: z.strictObject({ sensorPlace: line, sensorAxis }).optional(),
  phaseReference: line,
  counting,
  instrumentId: id,
  /** Dynamic weights found on the propeller; what stays counts in the limits. */
  found: z.array(z.strictObject({ place: placeName, mass: above, stays: z.boolean() })).max(48),
};

const said = z.strictObject(sheet);
export type FieldSheet = z.output<typeof said>;

const { instrumentId: _instrument, ...sheetKept } = sheet;
const signed = {
  by: who,
  /** Beside a trainee. */ supervisor: who.nullable(),
  at: instant,
  meaning: z.string(),
  contentHash: z.string(),
};
const instrumentUsed = z.object({ id, tag: z.string(), calibrationDueOn: date });
const shownSheet = z.object({ id, ...sheetKept, instrument: instrumentUsed, ...signed }).meta({ id: 'FieldSetUp' });

const read = { amplitude: amount, phase: degrees };
export const readings = z
  .array(
    z.strictObject({
      rpm,
      ...read,
      /** The second sensor, where the sheet has one. */ second: z.strictObject(read).optional(),
    }),
  )
  .min(1)
  .max(6);
export const trial = z.strictObject({
  mass: above,
  /** Where it sits: a place of the model, or an angle at the radius of the places. */
  place: placeName.optional(),
  angle: degrees.optional(),
  /** The plane of an angle, by name; the first unless it is said. */
  plane: planeName.optional(),
});

export const runKinds = ['baseline', 'trial', 'check'] as const;
const vibration = z.object({ amplitude: z.number(), phase: z.number() });
const weight = z.object({ mass: z.number(), angle: z.number() });

const run = z
  .object({
    id,
    setUpId: id,
    sequence: z.int(),
    kind: z.enum(runKinds),
    readings,
    trial: trial.nullable(),
    supersededById: id.nullable(),
    reason: z.string().nullable(),
    /** By how much each speed is off what the runs before said, where that is more than scatter explains. */
    surprising: z.boolean(),
    by: who,
    at: instant,
  })
  .meta({ id: 'FieldRun' });

const filling = z.object({
  place: z.string(),
  mass: z.number(),
  pieces: z.array(z.object({ partNumber: z.string(), count: z.int() })),
});
const proposal = z.object({
  fillings: z.array(filling),
  /** What whole pieces leave, plane by plane. */
  residuals: z.array(weight),
  /** In the order of `speeds`. */
  predicted: z.array(vibration),
});
/** What one sensor at one speed says; an influence for each plane. */
const told = z.object({
  rpm: z.int(),
  /** 0 for the first sensor, 1 for the second. */
  sensor: z.int(),
  influences: z.array(vibration),
  predicted: vibration,
  error: z.number(),
  weakTrial: z.boolean(),
});

/** What the runs so far say. */
const answer = z
  .object({
    /** For each plane in use. */
    changes: z.array(weight.extend({ plane: z.string().nullable() })),
    /** Every speed of the first sensor, then every speed of the second. */
    speeds: z.array(told),
    /** Planes in which no run by itself changed any reading by much. */
    weakPlanes: z.array(z.string()),
    scatter: z.number(),
    /** Readings with the same weights differ by more than the data expects. */
    scattersMore: z.boolean(),
    /** Beside what stands. */
    beside: proposal,
    /** With every weight of this order off first; null where none stands. */
    anew: proposal.nullable(),
  })
  .meta({ id: 'FieldAnswer' });

const standing = z
  .object({
    place: z.string(),
    /** Only where the model has two. */
    plane: z.string().optional(),
    angle: z.number(),
    partNumber: z.string().nullable(),
    lotCode: z.string().nullable(),
    pieces: z.int(),
    mass: z.number(),
    /** Found on the propeller, not fitted by this order. */
    found: z.boolean(),
  })
  .meta({ id: 'StandingWeight' });

const named = z.object({ id, name: z.string() });
const head = {
  ...{ id, number: z.string(), state: fieldState, version: z.int() },
  customer: named,
  aircraft: z.object({ id, registration: z.string(), airframe: z.string(), engine: z.string() }),
  propeller: z.object({ id, model: z.string(), serial: z.string() }),
  ...{ airport: z.string(), plannedOn: date, reason: z.string() },
};
export const fieldBalanceRow = z.object(head).meta({ id: 'FieldBalanceRow' });

const signedBalance = z
  .object({ remarks: z.string(), logEntry: z.string(), ...signed })
  .meta({ id: 'FieldBalanceSigned' });
const releasedBalance = z.object({ logEntry: z.string(), ...signed }).meta({ id: 'FieldBalanceReleased' });

export const fieldBalanceDetail = z
  .object({
    ...head,
    plannedBy: who,
    plannedAt: instant,
    abandoned: z.string().nullable(),
    modelId: id,
    bladeCount: z.int(),
    /** What the set-up was signed to, or what a set-up would take now. */
    spec: spec.nullable(),
    setUp: shownSheet.nullable(),
    runs: z.array(run),
    standing: z.array(standing),
    answer: answer.nullable(),
    /** Why there is no answer though a trial was run. */
    unanswered: z.string().nullable(),
    /** What the next signature would be refused for. */
    open: z.array(z.string()),
    balanced: signedBalance.nullable(),
    released: releasedBalance.nullable(),
    /** Its records were destroyed when their time had run; what is left says nothing of runs and weights. */
    purged: z.boolean(),
  })
  .meta({ id: 'FieldBalance' });

export const planned = {
  ...{ customerId: id, aircraftId: id, unitId: id },
  airport: line,
  plannedOn: date,
  reason: note.refine((text) => text.length > 0, 'This cannot be empty'),
};

export type FieldBalanceDetail = z.output<typeof fieldBalanceDetail>;
export type FieldBalanceSpec = z.output<typeof spec>;
export type FieldRun = z.output<typeof run>;
export type FieldAnswer = z.output<typeof answer>;
export type StandingWeight = z.output<typeof standing>;
export type FieldReadings = z.output<typeof readings>;
export type FieldTrial = z.output<typeof trial>;
