import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { addMonths, endOfMonth } from '@hubwright/rules/dates';
import { type NextDue, type NextDueInput, nextDue } from '@hubwright/rules/due';
import { RuleError } from '@hubwright/rules/errors';
import type { Cycling } from './cycling.ts';
import { asFlown, type Flown } from './flown.ts';
import type { Flying } from './flying.ts';

export type DueReply = Pick<
  Reply<typeof dueDateOperations.nextDue>,
  | 'dueOn'
  | 'earliest'
  | 'latest'
  | 'dueHoursTenths'
  | 'hoursLeftTenths'
  | 'daysLeft'
  | 'governedBy'
  | 'governedWhat'
  | 'perDay'
  | 'overdue'
  | 'basis'
  | 'requirement'
>;

export interface DueRule {
  /** The manual and revision it stands in. */
  readonly revision: string;
  readonly hoursTenths: number | null;
  readonly months: number | null;
  readonly endOfMonth: boolean;
  readonly requirement: string;
}

/** What is on record of a unit, as far as its due date goes. */
export interface DueFacts {
  readonly overhaulOn: string | null;
  readonly rules: readonly DueRule[];
  readonly flying: Flying;
  /** What its aircraft's meter of cycles showed; nothing where none is read. */
  readonly cycling?: Cycling;
  readonly asOf: string;
  /** Why rules count although nobody can tell whether they hold for this unit, each in a sentence. */
  readonly doubts?: readonly string[];
  /** What it had flown since the overhaul by a day, as papers say and as is computed for today; the oldest first. */
  readonly flownBy?: readonly { readonly on: string; readonly tenths: number }[];
  /** Hours a month as somebody supposes, in place of the use by the readings. */
  readonly hoursPerMonth?: number | undefined;
}

type Dated = DueFacts & { readonly overhaulOn: string };

/** When a unit is next due; what is not known stays unknown, and the basis says why. Pure. */
export function dueOfUnit(facts: DueFacts): DueReply {
  const { overhaulOn, rules } = facts;
  if (overhaulOn === null)
    return unknown('No overhaul with its date is on record, so nothing is counted from it', rules);
  if (rules.length === 0)
    return unknown('The current manual revision names no time between overhauls for this unit', rules);
  // One unit with an impossible day must not stop the list of all.
  if (overhaulOn > facts.asOf) return unknown(`Its last overhaul is on record for ${overhaulOn}, a day to come`, rules);
  const dated = { ...facts, overhaulOn };
  try {
    return computed(dated, asFlown(dated));
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    return computed(dated, asFlown({ ...dated, flying: { kind: 'contradictory', why: error.message } }));
  }
}

function computed({ rules, asOf, overhaulOn, doubts = [] }: Dated, flown: Flown): DueReply {
  const { installed, hours, flownBefore, use, carriedOver, readings } = flown;
  const input: NextDueInput = {
    lastOverhaul: { date: overhaulOn, hours, installed, flownBefore },
    limits: rules.map((rule) => ({
      ...(rule.hoursTenths === null ? {} : { hours: rule.hoursTenths / 10 }),
      ...(rule.months === null ? {} : { months: rule.months, endOfMonth: rule.endOfMonth }),
    })),
    ...{ readings: [...readings], carriedOver, use, asOf },
  };
  const due = nextDue(input);
  const { governedBy } = due;
  return {
    ...{ dueOn: due.dueDate, latest: due.latest, daysLeft: due.daysLeft, governedBy },
    earliest: flown.isAtLeast ? 'unknown' : due.earliest,
    ...hoursOf(due, flown),
    governedWhat: governedBy === 'none' ? '' : whatGoverns(rules, overhaulOn, governedBy),
    perDay: due.perDay,
    overdue: due.overdue,
    basis: [...[due.basis, ...flown.words, ...doubts]].join(' '),
    requirement: requirementOf(rules),
  };
}

/** Off the wing there is no meter to name a figure of; with a lower bound only, no figure is known, but what is past is past. */
function hoursOf(due: NextDue, { isAtLeast, hasMeter }: Flown): Pick<DueReply, 'dueHoursTenths' | 'hoursLeftTenths'> {
  const left = tenths(due.hoursLeft);
  const isKnown = !isAtLeast || (typeof left === 'number' && left < 0);
  return {
    dueHoursTenths: hasMeter && !isAtLeast ? tenths(due.dueHours) : 'unknown',
    hoursLeftTenths: isKnown ? left : 'unknown',
  };
}

/** The rule whose limit is reached first, by its paper. */
function whatGoverns(rules: readonly DueRule[], from: string, by: 'hours' | 'calendar'): string {
  const reach = ({ hoursTenths, months, endOfMonth: toEnd }: DueRule) => {
    if (by === 'hours') return hoursTenths === null ? undefined : String(hoursTenths).padStart(10, '0');
    if (months === null) return undefined;
    return toEnd ? endOfMonth(addMonths(from, months)) : addMonths(from, months);
  };
  const [first] = rules
    .map((rule) => ({ rule, at: reach(rule) }))
    .filter(({ at }) => at !== undefined)
    .sort((a, b) => String(a.at).localeCompare(String(b.at)));
  return first ? `time between overhauls, ${first.rule.revision}` : '';
}

function tenths(hours: number | 'unknown'): number | 'unknown' {
  return hours === 'unknown' ? hours : Math.round(hours * 10);
}

/** Required wherever one of the rules is: a letter must not call a required interval recommended. */
export function requirementOf(rules: readonly DueRule[]): DueReply['requirement'] {
  if (rules.some(({ requirement }) => requirement === 'required')) return 'required';
  return rules.length > 0 ? 'recommended' : null;
}

function unknown(basis: string, rules: readonly DueRule[]): DueReply {
  const nothing = 'unknown' as const;
  return {
    ...{ dueOn: nothing, earliest: nothing, latest: nothing, dueHoursTenths: nothing, hoursLeftTenths: nothing },
    ...{ daysLeft: nothing, perDay: nothing, governedBy: 'none', governedWhat: '', overdue: false },
    ...{ basis, requirement: requirementOf(rules) },
  };
}
