import type { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { addMonths, endOfMonth } from '@hubwright/rules/dates';
import { nextDue } from '@hubwright/rules/due';
import { RuleError } from '@hubwright/rules/errors';

type DueReply = Pick<
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

/** What is on record of a unit, as far as its due date goes. Readings are of the aircraft's meter the overhaul was recorded by. */
export interface DueFacts {
  readonly overhaul: { readonly on: string; readonly meterTenths: number | null } | null;
  readonly rules: readonly DueRule[];
  readonly readings: readonly { readonly readOn: string; readonly hoursTenths: number }[];
  readonly asOf: string;
  /** Serial ranges of rules that count although nobody can tell whether the unit lies in them. */
  readonly doubts?: readonly string[];
}

/** When a unit is next due; what is not known stays unknown, and the basis says why. Pure. */
export function dueOfUnit(facts: DueFacts): DueReply {
  const { overhaul, rules } = facts;
  if (!overhaul) return unknown('No overhaul with its date is on record, so nothing is counted from it', rules);
  if (rules.length === 0)
    return unknown('The current manual revision names no time between overhauls for this unit', rules);
  try {
    return computed(facts, overhaul, [...facts.readings]);
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    const answer = computed(facts, { ...overhaul, meterTenths: null }, []);
    return { ...answer, basis: `${answer.basis} Meter readings left out: ${error.message}` };
  }
}

function computed(
  { rules, asOf, doubts = [] }: DueFacts,
  overhaul: { on: string; meterTenths: number | null },
  readings: DueFacts['readings'],
): DueReply {
  const due = nextDue({
    lastOverhaul: { date: overhaul.on, hours: overhaul.meterTenths === null ? 'unknown' : overhaul.meterTenths / 10 },
    limits: rules.map((rule) => ({
      ...(rule.hoursTenths === null ? {} : { hours: rule.hoursTenths / 10 }),
      ...(rule.months === null ? {} : { months: rule.months, endOfMonth: rule.endOfMonth }),
    })),
    readings: readings.map(({ readOn, hoursTenths }) => ({ date: readOn, hours: hoursTenths / 10 })),
    asOf,
  });
  return {
    dueOn: due.dueDate,
    earliest: due.earliest,
    latest: due.latest,
    dueHoursTenths: tenths(due.dueHours),
    hoursLeftTenths: tenths(due.hoursLeft),
    daysLeft: due.daysLeft,
    governedBy: due.governedBy,
    governedWhat: whatGoverns(rules, overhaul.on, due.governedBy),
    perDay: due.perDay,
    overdue: due.overdue,
    basis: [
      due.basis,
      ...doubts.map((range) => `A limit for serials ${range} counts, as the serial cannot be compared.`),
    ].join(' '),
    requirement: requirementOf(rules),
  };
}

/** The rule whose limit is reached first, by its paper. */
function whatGoverns(rules: readonly DueRule[], from: string, by: 'hours' | 'calendar' | 'none'): string {
  const reach = ({ hoursTenths, months, endOfMonth: toEnd }: DueRule) => {
    if (by === 'hours') return hoursTenths === null ? undefined : String(hoursTenths).padStart(10, '0');
    if (months === null) return undefined;
    return toEnd ? endOfMonth(addMonths(from, months)) : addMonths(from, months);
  };
  if (by === 'none') return '';
  const [first] = rules
    .flatMap((rule) => ({ rule, at: reach(rule) }))
    .filter(({ at }) => at !== undefined)
    .sort((a, b) => String(a.at).localeCompare(String(b.at)));
  return first ? `time between overhauls, ${first.rule.revision}` : '';
}

function tenths(hours: number | 'unknown'): number | 'unknown' {
  return hours === 'unknown' ? hours : Math.round(hours * 10);
}

/** Required wherever one of the rules is: a letter must not call a required interval recommended. */
function requirementOf(rules: readonly DueRule[]): DueReply['requirement'] {
  if (rules.some(({ requirement }) => requirement === 'required')) return 'required';
  return rules.length > 0 ? 'recommended' : null;
}

function unknown(basis: string, rules: readonly DueRule[]): DueReply {
  return {
    ...{
      dueOn: 'unknown',
      earliest: 'unknown',
      latest: 'unknown',
      dueHoursTenths: 'unknown',
      hoursLeftTenths: 'unknown',
    },
    ...{
      daysLeft: 'unknown',
      governedBy: 'none',
      governedWhat: '',
      perDay: 'unknown',
      overdue: false,
      basis,
      requirement: requirementOf(rules),
    },
  } as DueReply;
}
