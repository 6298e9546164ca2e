import type { SealLife, StoragePeriod, StorageRule } from '@hubwright/rules/due';
import type { Measure, Total } from '../../units/public.ts';

/** What may still be flown after a day: hours in tenths, or cycles one by one. */
export interface CountLeft {
  readonly measure: Measure;
  readonly count: number;
  readonly on: string;
}

/** One limit beside the time between overhauls, as a person names it. */
export interface LimitSource {
  readonly kind: 'calendar' | 'life' | 'directive';
  readonly what: string;
  readonly requirement: 'recommended' | 'required';
  /** The last good day; null where it has none. */
  readonly on: string | null;
  readonly left: CountLeft | null;
  /** How it stands, in a sentence. */
  readonly says: string;
}

/** A part that the manual limits in life. */
export interface LimitedPart {
  readonly unit_id: string;
  readonly item_id: string;
  readonly position: string;
  readonly part_number: string;
  readonly serial: string | null;
  readonly paper: string;
  readonly hours_tenths: number | null;
  readonly cycles: number | null;
  readonly overhauls: number | null;
  readonly since_new_overhauls: number | null;
  /** Overhauls on record here. */
  readonly overhauled: number;
}

/** What a limited part has since new, as computed for the day. */
export type TotalOf = (itemId: string, measure: Measure) => Total;

/** A seal that the manual limits, as it was fitted last: the oldest of those fitted together. */
export interface FittedSeal {
  readonly unit_id: string;
  readonly part_number: string;
  readonly installed_on: string;
  readonly cured: string | null;
}

/** What a manual says of storage and seals for a unit, and its times in storage. */
export interface Kept {
  readonly unit_id: string;
  readonly paper: string | null;
  readonly storage_rules: StorageRule[];
  readonly seals: (SealLife & { readonly partNumber: string; readonly requirement: 'recommended' | 'required' })[];
  readonly storage: StoragePeriod[];
}

/** All that bears on one unit beside its time between overhauls. */
export interface UnitSources {
  readonly limits: readonly LimitSource[];
  readonly storage: readonly StoragePeriod[];
  readonly storageRules: readonly StorageRule[];
  /** What has no date of its own and is told all the same, each in a sentence. */
  readonly notes: readonly string[];
}

export const noSources: UnitSources = { limits: [], storage: [], storageRules: [], notes: [] };

export function counted(count: number, measure: Measure): string {
  return measure === 'hours' ? inHours(count) : `${count} ${count === 1 ? 'cycle' : 'cycles'}`;
}

export function inHours(tenths: number): string {
  return `${Math.trunc(tenths / 10)}.${Math.abs(tenths % 10)} h`;
}
