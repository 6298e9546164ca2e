import { z } from 'zod';
import type { SheetKind } from '../manuals/sheets.ts';
import { decimal, id, instant, line } from '../values.ts';
import { anglesEntry, functionTestEntry } from './built-entries.ts';
import { chargeEntry } from './charge-entry.ts';
import { bakeEntry, cureEntry } from './chart-entries.ts';
import { fitEntry } from './fit-entry.ts';
import { sheetDrawn } from './sheet-drawn.ts';
import { staticBalanceEntry } from './static-balance-entry.ts';
import { torqueEntry } from './torque-entry.ts';

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
    staticBalanceEntry,
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
