import type { SheetKind, SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { EntryOf, SaidLine } from '@hubwright/contracts/work-orders/sheet-entries';
import type { GuardBandMethod } from '@hubwright/rules/measurement';
import type { ComponentType } from 'react';
import type { Step, Traveler } from '../traveler.ts';

/** What a sheet is about. */
export interface About<K extends SheetKind> {
  readonly traveler: Traveler;
  readonly step: Step;
  readonly spec: SheetOf<K>;
  /** What is known of the instrument chosen, and how the shop allows for it; null while none is, or where nothing is known. */
  readonly doubt: { readonly uncertainty: string; readonly unit: string } | null;
  readonly method: GuardBandMethod;
}

export interface SheetFieldsProps<K extends SheetKind, D> {
  readonly about: About<K>;
  readonly draft: D;
  readonly onChange: (draft: D) => void;
}

/** What a filled-in sheet says, by the same rule the server judges it by. */
export interface SheetVerdict {
  readonly said: readonly SaidLine[];
  readonly reasons: readonly string[];
}

/** One kind of sheet at the bench: how it is filled in, read and judged while it is typed. Nothing in it is filled in beforehand. */
export interface SheetForm<K extends SheetKind, D> {
  readonly empty: D;
  readonly Fields: ComponentType<SheetFieldsProps<K, D>>;
  /** The entry as the command takes it; undefined while something is missing or cannot be read. */
  readonly entryOf: (draft: D, about: About<K>) => EntryOf<K> | undefined;
  /** Throws RuleError for what cannot be; undefined while it cannot be told. */
  readonly judge: (entry: EntryOf<K>, about: About<K>, draft: D) => SheetVerdict | undefined;
  /** What is missing, in words; by name where the draft tells it. */
  readonly missing: string | ((draft: D, about: About<K>) => string);
}
