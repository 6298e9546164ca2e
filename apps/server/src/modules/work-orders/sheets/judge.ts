import type { SheetKind, SheetOf } from '@hubwright/contracts/manuals/sheets';
import { Problem } from '@hubwright/contracts/problems';
import type { EntryOf, SaidLine } from '@hubwright/contracts/work-orders/sheet-entries';
import { RuleError } from '@hubwright/rules/errors';
import type { SignedStep, Signing } from '../step-signing.ts';

/** What a sheet says once it is judged. */
export interface Judged {
  /** As it is shown and printed beside the signature. */
  readonly said: readonly SaidLine[];
  /** Why it is not good; empty when it is. A sheet with reasons is never signed as good. */
  readonly reasons: readonly string[];
  /** Figures of the verdict, kept in the signed content. */
  readonly verdict: object;
}

export interface UsedInstrument {
  readonly id: string;
  readonly tag: string;
  readonly uncertainty: string | null;
  readonly unit: string | null;
}

export interface Sheet<K extends SheetKind> {
  readonly step: SignedStep;
  readonly spec: SheetOf<K>;
  readonly entry: EntryOf<K>;
  /** What the signature names as used. */
  readonly instrument: UsedInstrument | undefined;
  /** The lots it names as used. */
  readonly lotIds: readonly string[];
}

/** Judges sheets of one kind. Throws `sheet-wrong` for what cannot be read or cannot have happened. */
export type Judge<K extends SheetKind> = (context: Signing, sheet: Sheet<K>) => Promise<Judged> | Judged;

/** An entry that is no reading: refused with what to do, at its place in the sheet. */
export function sheetWrong(detail: string, pointer: string): Problem {
  return new Problem('sheet-wrong', detail, {}, [{ pointer: `/sheet${pointer}`, detail }]);
}

/** Runs a rule; its refusal becomes `sheet-wrong` at this place, or else at the path the rule names. */
export function byRule<T>(rule: () => T, pointer?: string): T {
  try {
    return rule();
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw sheetWrong(error.message, pointer ?? `/${error.path.replace(/[.[]/g, '/').replaceAll(']', '')}`);
  }
}
