import type { SheetKind, SheetSpec } from '@hubwright/contracts/manuals/sheets';
import { Problem } from '@hubwright/contracts/problems';
import type { SheetEntry } from '@hubwright/contracts/work-orders/sheet-entries';
import type { SignedStep, Signing } from '../step-signing.ts';
import { judgeAnglesSheet } from './angles.ts';
import { judgeBakeSheet } from './bake.ts';
import { judgeChargeSheet } from './charge.ts';
import { judgeCureSheet } from './cure.ts';
import { judgeEddyCurrentSheet } from './eddy-current.ts';
import { judgeFitSheet } from './fit.ts';
import { judgeFunctionTestSheet } from './function-test.ts';
import { judgeGovernorTest } from './governor-test.ts';
import type { Judge, Judged, UsedInstrument } from './judge.ts';
import { judgeStaticBalance } from './static-balance.ts';
import { judgeTorqueSheet } from './torque.ts';

const judges: { readonly [K in SheetKind]: Judge<K> } = {
  angles: judgeAnglesSheet,
  bake: judgeBakeSheet,
  charge: judgeChargeSheet,
  cure: judgeCureSheet,
  'eddy-current': judgeEddyCurrentSheet,
  fit: judgeFitSheet,
  'function-test': judgeFunctionTestSheet,
  'governor-test': judgeGovernorTest,
  torque: judgeTorqueSheet,
  'static-balance': judgeStaticBalance,
};

/** A sheet as it is signed: what was asked, what was written down, and what it says. */
export interface JudgedSheet extends Judged {
  readonly kind: SheetKind;
  readonly spec: SheetSpec;
  readonly entry: SheetEntry;
}

/** The sheet of a step, judged; undefined where the step asks for none. Throws `sheet-missing`, `sheet-wrong` and what its kind refuses. */
export async function judgedSheet(
  context: Signing,
  step: SignedStep,
  filled: { sheet?: SheetEntry | undefined; instrument: UsedInstrument | undefined; lotIds: readonly string[] },
): Promise<JudgedSheet | undefined> {
  const { sheet: entry, instrument, lotIds } = filled;
  const spec = step.sheet as SheetSpec | null;
  if (spec === null && entry === undefined) return undefined;
  if (spec?.kind !== entry?.kind || !spec || !entry)
    throw new Problem('sheet-missing', `“${step.title}” is signed with ${spec ? 'its sheet' : 'no sheet'}`, {}, [
      { pointer: '/sheet', detail: spec ? 'Fill in the sheet of this step' : 'This step asks for no sheet' },
    ]);
  // Both are of one kind, which the table cannot tell the compiler.
  const judge = judges[spec.kind] as unknown as Judge<SheetKind>;
  return { kind: spec.kind, spec, entry, ...(await judge(context, { step, spec, entry, instrument, lotIds })) };
}
