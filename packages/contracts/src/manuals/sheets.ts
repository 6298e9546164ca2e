import { z } from 'zod';
import { decimal } from '../values.ts';
import { anglesSheet } from './angle-sheet.ts';
import { bakeSheet } from './bake-sheet.ts';
import { chargeSheet } from './charge-sheet.ts';
import { cureSheet } from './cure-sheet.ts';
import { fitSheet } from './fit-sheet.ts';
import { functionTestSheet } from './function-test-sheet.ts';
import { staticBalanceSheet } from './static-balance-sheet.ts';
import { torqueSheet } from './torque-sheet.ts';

/** The test of a governor: signed with its run on the bench. What is measured goes by the program of the application, not by the route. */
const governorTestSheet = z.strictObject({ kind: z.literal('governor-test') }).meta({ id: 'GovernorTestSheet' });

/** What an eddy-current procedure asks of its set-up. Bounds inclusive; signal in percent of the screen’s height, drift in percent of it. */
const eddyCurrentSheet = z
  .strictObject({
    kind: z.literal('eddy-current'),
    frequency: z.strictObject({ low: decimal, high: decimal, unit: z.string().trim().min(1).max(20) }),
    /** The notch of the reference standard that the signal is set on. */
    notchDepth: decimal,
    unit: z.string().trim().min(1).max(20),
    signal: z.strictObject({ low: decimal, high: decimal }),
    /** How far the signal may have moved by the end of the scan. */
    drift: decimal,
  })
  .meta({ id: 'EddyCurrentSheet' });

/**
 * What a step asks to be written down beyond single values: a sheet of its kind, filled in at the bench, judged by a rule of its own and
 * signed with the step. A new kind is one more entry here, in `sheetEntry`, in the server’s `judges` and in the dashboard’s `sheets`.
 */
export const sheetSpec = z
  .discriminatedUnion('kind', [
    anglesSheet,
    bakeSheet,
    chargeSheet,
    cureSheet,
    eddyCurrentSheet,
    fitSheet,
    functionTestSheet,
    governorTestSheet,
    staticBalanceSheet,
    torqueSheet,
  ])
  .meta({ id: 'SheetSpec' });
export type SheetSpec = z.output<typeof sheetSpec>;
export type SheetKind = SheetSpec['kind'];
export type SheetOf<K extends SheetKind> = Extract<SheetSpec, { kind: K }>;
