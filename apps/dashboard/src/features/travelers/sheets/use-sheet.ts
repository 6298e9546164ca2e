import type { SheetKind, SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { SaidLine, SheetEntry } from '@hubwright/contracts/work-orders/sheet-entries';
import { RuleError } from '@hubwright/rules/errors';
import { useState } from 'react';
import type { Step, Traveler } from '../traveler.ts';
import { useDoubt } from '../use-accepted.ts';
import { anglesForm } from './angles-form.ts';
import { bakeForm } from './bake-form.ts';
import { chargeForm } from './charge-form.ts';
import { cureForm } from './cure-form.ts';
import { eddyCurrentForm } from './eddy-current-form.ts';
import { fitForm } from './fit-form.ts';
import { functionTestForm } from './function-test-form.ts';
import { governorTestForm } from './governor-test-form.ts';
import type { About, SheetForm } from './sheet-form.ts';
import { staticBalanceForm } from './static-balance-form.ts';
import { torqueForm } from './torque-form.ts';

// biome-ignore lint/suspicious/noExplicitAny: what a draft looks like is each form's own matter
type Forms = { readonly [K in SheetKind]: SheetForm<K, any> };
const forms: Forms = {
  angles: anglesForm,
  bake: bakeForm,
  charge: chargeForm,
  cure: cureForm,
  'eddy-current': eddyCurrentForm,
  fit: fitForm,
  'function-test': functionTestForm,
  'governor-test': governorTestForm,
  torque: torqueForm,
  'static-balance': staticBalanceForm,
};

/** The sheet of a step while it is filled in. */
export interface SheetInHand {
  readonly form: SheetForm<SheetKind, unknown>;
  readonly about: About<SheetKind>;
  readonly draft: unknown;
  readonly setDraft: (draft: unknown) => void;
  /** As the command takes it, once it can be read. */
  readonly entry: SheetEntry | undefined;
  readonly said: readonly SaidLine[];
  /** Undefined while nothing can be told; empty when it is good. */
  readonly reasons: readonly string[] | undefined;
  /** What keeps it from being signed either way, in words; empty when nothing does. */
  readonly missing: string;
}

/** The sheet a step asks for, or undefined where it asks for none. */
export function useSheet(traveler: Traveler, step: Step, instrumentId: string | null): SheetInHand | undefined {
  const accepted = useDoubt(step, instrumentId);
  const spec = step.sheet as SheetOf<SheetKind> | null;
  const form = spec ? (forms[spec.kind] as unknown as SheetForm<SheetKind, unknown>) : undefined;
  const [draft, setDraft] = useState<unknown>(form?.empty);
  if (!spec || !form) return undefined;
  const about = { traveler, step, spec, ...accepted };
  const entry = form.entryOf(draft, about);
  return { form, about, draft, setDraft, entry, ...standing(form, about, { entry, draft }) };
}

function standing(
  form: SheetForm<SheetKind, unknown>,
  about: About<SheetKind>,
  { entry, draft }: { entry: SheetEntry | undefined; draft: unknown },
): Pick<SheetInHand, 'said' | 'reasons' | 'missing'> {
  const missing = typeof form.missing === 'string' ? form.missing : form.missing(draft, about);
  if (!entry) return { said: [], reasons: undefined, missing };
  try {
    const verdict = form.judge(entry, about, draft);
    return verdict ? { ...verdict, missing: '' } : { said: [], reasons: undefined, missing };
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return { said: [], reasons: [error.message], missing: error.message };
  }
}
