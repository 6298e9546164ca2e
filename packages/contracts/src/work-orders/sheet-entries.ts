import { z } from 'zod';
import { bladeStop } from '../manuals/angle-sheet.ts';
import type { SheetKind } from '../manuals/sheets.ts';
import { decimal, id, instant, line } from '../values.ts';
import { chargeEntry } from './charge-entry.ts';
import { bakeEntry, cureEntry } from './chart-entries.ts';
import { fitEntry } from './fit-entry.ts';
import { sheetDrawn } from './sheet-drawn.ts';
import { torqueEntry } from './torque-entry.ts';

/** Every blade at every stop, with the application it was read for. */
const anglesEntry = z
  .strictObject({
    kind: z.literal('angles'),
    applicationId: id,
    cycles: z.int().min(0).max(1000),
    readings: z.array(z.strictObject({ blade: z.int().min(1).max(8), stop: bladeStop, angle: decimal })).max(64),
  })
  .meta({ id: 'AnglesEntry' });

/** A function test as it was made; values by where they stand in what is asked, such as `play/2/edgewise`. */
const functionTestEntry = z
  .strictObject({
    kind: z.literal('function-test'),
    medium: line.optional(),
    cycles: z.int().min(0).max(1000).optional(),
    values: z.array(z.strictObject({ of: line, value: decimal })).max(80),
  })
  .meta({ id: 'FunctionTestEntry' });

/** The run that passed or failed. */
const governorTestEntry = z
  .strictObject({ kind: z.literal('governor-test'), runId: id })
  .meta({ id: 'GovernorTestEntry' });

/** The set-up of an eddy-current scan, with the signal from the notch before and after it. */
const eddyCurrentEntry = z
  .strictObject({
    kind: z.literal('eddy-current'),
    probe: line,
    frequency: decimal,
    /** In decibels. */
    gain: decimal,
    standardSerial: line,
    notchDepth: decimal,
    before: decimal,
    after: decimal,
  })
  .meta({ id: 'EddyCurrentEntry' });

/** A step’s sheet as filled in. */
export const sheetEntry = z
  .discriminatedUnion('kind', [
    anglesEntry,
    bakeEntry,
    chargeEntry,
    cureEntry,
    eddyCurrentEntry,
    fitEntry,
    functionTestEntry,
    governorTestEntry,
    torqueEntry,
  ])
  .meta({ id: 'SheetEntry' });
export type SheetEntry = z.output<typeof sheetEntry>;
export type EntryOf<K extends SheetKind> = Extract<SheetEntry, { kind: K }>;

/** A line of a sheet in words, or an instant. */
const saidLine = z.union([
  z.object({ name: z.string(), value: z.string() }),
  z.object({ name: z.string(), at: instant }),
]);
export type SaidLine = z.output<typeof saidLine>;

/** A sheet as it was signed: in words, and why it is not good where it is not. */
export const signedSheet = z
  .object({
    kind: z.string(),
    said: z.array(saidLine),
    reasons: z.array(z.string()),
    drawn: sheetDrawn.nullable(),
  })
  .meta({ id: 'SignedSheet' });
