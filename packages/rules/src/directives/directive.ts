/** To what a directive applies. Without a part number the unit of that model itself, else parts of that number, in any model or in that one. */
export interface DirectiveLine {
  readonly modelId: string | null;
  readonly partNumber: string | null;
  readonly serialFrom: string | null;
  readonly serialTo: string | null;
}

/** Until when a directive may wait for the first time: counted from the day it is in force, and in total hours since new. */
export interface FirstWindow {
  readonly days: number | null;
  readonly months: number | null;
  readonly hoursTenths: number | null;
  readonly totalTenths: number | null;
}

export interface Directive {
  readonly id: string;
  readonly repeats: 'one-time' | 'recurring' | 'at-overhaul';
  /** The first day it is in force. */
  readonly effectiveOn: string;
  readonly everyHoursTenths: number | null;
  readonly everyMonths: number | null;
  readonly endOfMonth: boolean;
  /** When it must be done first, whichever comes first; all null where it is due as soon as it is in force. */
  readonly first: FirstWindow;
  readonly lines: readonly DirectiveLine[];
  readonly withdrawnOn: string | null;
  /** Those that take its place, each from the day it is in force. */
  readonly supersededBy: readonly { readonly number: string; readonly effectiveOn: string }[];
  /** Work done by these counts as work done by it. */
  readonly credits: readonly string[];
  /** Work done by these ends it for good. */
  readonly endedBy: readonly string[];
}

/** The unit or one of its parts. Times are since new. */
export interface DirectiveItem {
  readonly itemId: string;
  readonly name: string;
  readonly partNumber: string;
  /** Null while nobody has read it. */
  readonly serial: string | null;
  readonly hoursTenths: number | 'unknown';
  /** What is known at least where the hours are not: what that is past already is due whatever the rest. */
  readonly atLeastTenths?: number;
  /** Hours since new as they were on earlier days, the oldest first. */
  readonly earlier?: readonly { readonly on: string; readonly hoursTenths: number }[];
}

export interface DirectiveUnit {
  readonly modelId: string | null;
  readonly unit: DirectiveItem;
  readonly parts: readonly DirectiveItem[];
  /** Part numbers of which the record cannot tell whether one is fitted. */
  readonly silentOn: readonly string[];
}

/** Done here, found done in the papers, not concerned after all, put off, or: what was recorded before counts no more. */
export type DirectiveOutcome = 'done' | 'found-done' | 'does-not-apply' | 'deferred' | 'taken-back';

/** One record of one directive on one item. */
export interface DirectiveRecord {
  readonly directiveId: string;
  readonly itemId: string;
  readonly outcome: DirectiveOutcome;
  readonly on: string;
  readonly hoursTenths: number | 'unknown';
  readonly terminating: boolean;
  /** The last good day of a deferral. */
  readonly until: string | null;
  readonly workOrderId: string;
}

export interface DirectiveVerdict {
  readonly itemId: string;
  readonly name: string;
  readonly state: 'not-applicable' | 'not-due' | 'open' | 'complied' | 'deferred' | 'terminated' | 'undecided';
  readonly reason: string;
  /** The last good day and the hours since new at which it falls due again, whichever comes first; null where it is not known or there is none. */
  readonly until: { readonly date: string | null; readonly hoursTenths: number | null } | null;
}

/** On which day it is asked, and for which visit; null when the unit is not here. */
export interface DirectiveAsked {
  readonly asOf: string;
  readonly visit: { readonly workOrderId: string; readonly isOverhaul: boolean } | null;
}

/** Hours since new, or what is known of them. */
export function hoursAtLeast({ hoursTenths, atLeastTenths = 0 }: DirectiveItem): number {
  return hoursTenths === 'unknown' ? atLeastTenths : hoursTenths;
}
