import { addDays, addMonths, daysBetween, endOfMonth } from '@hubwright/rules/dates';
import { type DueByLimit, firstLimit, storageCount } from '@hubwright/rules/due';
import { cyclesDue } from '../cycling.ts';
import { type DueFacts, type DueReply, dueOfUnit, requirementOf } from '../due-of-unit.ts';
import type { CountLeft, LimitSource, UnitSources } from './source.ts';

/** One limit as the answer tells it. */
export interface ToldLimit {
  readonly kind: DueByLimit['kind'];
  readonly what: string;
  readonly requirement: DueByLimit['requirement'];
  readonly dueOn: string | 'unknown';
  readonly says: string;
}

export interface WholeDue extends DueReply {
  /** Every limit beside the time between overhauls, the first due first. */
  readonly others: readonly ToldLimit[];
  readonly notes: readonly string[];
}

/**
 * When a unit is next due by everything that limits it, whichever comes first. Time in storage that the manual does not count moves the
 * limits in months on by so many days, and nothing else. What is not known bounds nothing and is told.
 */
export function wholeDue(facts: DueFacts, sources: UnitSources): WholeDue {
  const stored = storageOf(facts, sources);
  const isMoved = stored.daysNotCounted > 0;
  const base = isMoved ? byHoursAlone(facts) : dueOfUnit(facts);
  const moved = isMoved ? movedMonths(facts, stored.daysNotCounted) : [];
  const others = sources.limits.map((source) => ({ source, due: dueBy(source, facts) }));
  const own = base.governedBy === 'none' ? [] : [asLimit(base)];
  const dues = others.map(({ due }) => due.limit);
  const first = firstLimit([...own, ...moved, ...dues]);
  const governing = first.governing;
  const meters = [base, ...others.map(({ due }) => due)];
  return {
    ...base,
    ...{ dueOn: first.dueOn, earliest: first.earliest, latest: first.latest, overdue: first.overdue || base.overdue },
    daysLeft: first.dueOn === 'unknown' ? 'unknown' : daysBetween(facts.asOf, first.dueOn),
    ...{ governedBy: governing?.kind ?? 'none', governedWhat: governing?.what ?? '' },
    dueHoursTenths: least(meters.map(({ dueHoursTenths }) => dueHoursTenths)),
    hoursLeftTenths: least(meters.map(({ hoursLeftTenths }) => hoursLeftTenths)),
    requirement: dues.some((due) => due === governing && due.requirement === 'required')
      ? 'required'
      : base.requirement,
    basis: [...(governing && governing !== own[0] ? behind(base, governing) : [base.basis]), ...stored.says]
      .filter((sentence) => sentence !== '')
      .join(' '),
    others: others
      .map(({ source: { kind, what, requirement, says }, due }) => ({
        ...{ kind, what, requirement, says: due.why === '' ? says : `${says} ${due.why}` },
        dueOn: due.limit.dueOn,
      }))
      .sort((a, b) => (a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : 0)),
    notes: sources.notes,
  };
}

/** The rules by their hours; their months are told apart from them, moved on. */
function byHoursAlone(facts: DueFacts): DueReply {
  const rules = facts.rules
    .filter(({ hoursTenths }) => hoursTenths !== null)
    .map((rule) => ({ ...rule, months: null }));
  const due = dueOfUnit({ ...facts, rules });
  return {
    ...due,
    basis: rules.length === 0 ? (facts.doubts ?? []).join(' ') : due.basis,
    requirement: requirementOf(facts.rules),
  };
}

function storageOf({ overhaulOn, asOf }: DueFacts, { storage, storageRules }: UnitSources) {
  if (overhaulOn === null) return { daysNotCounted: 0, says: [] };
  return storageCount(storage, { rules: storageRules, since: overhaulOn, asOf });
}

function movedMonths({ overhaulOn, rules, asOf }: DueFacts, days: number): DueByLimit[] {
  return rules.flatMap(({ months, endOfMonth: toEnd, revision, requirement }) => {
    if (months === null || overhaulOn === null) return [];
    const end = addMonths(overhaulOn, months);
    const what = `time between overhauls, ${revision}, without ${days} days in storage`;
    return [onDay(addDays(toEnd ? endOfMonth(end) : end, days), { kind: 'calendar', what, requirement, asOf })];
  });
}

function onDay(
  on: string,
  { asOf, requirement, ...named }: { kind: DueByLimit['kind']; what: string; requirement: string; asOf: string },
): DueByLimit {
  const required = requirement === 'required' ? 'required' : 'recommended';
  return { ...named, requirement: required, dueOn: on, earliest: on, latest: on, overdue: on < asOf };
}

function asLimit({ dueOn, earliest, latest, overdue, governedBy, governedWhat, requirement }: DueReply): DueByLimit {
  return {
    ...{ dueOn, earliest, latest, overdue, requirement: requirement ?? 'recommended' },
    ...{ kind: governedBy === 'hours' ? 'hours' : 'calendar', what: governedWhat },
  };
}

type Tenths = number | 'unknown';
interface SourceDue {
  readonly limit: DueByLimit;
  readonly dueHoursTenths: Tenths;
  readonly hoursLeftTenths: Tenths;
  readonly why: string;
}

/** A source by its day and by what is counted, whichever comes first. */
function dueBy(source: LimitSource, facts: DueFacts): SourceDue {
  const { kind, what, requirement, on, left } = source;
  const named = { kind, what, requirement };
  const byDay = on === null ? [] : [onDay(on, { ...named, asOf: facts.asOf })];
  const none: DueByLimit = { ...named, dueOn: 'unknown', earliest: 'unknown', latest: 'unknown', overdue: false };
  if (left === null) return { limit: byDay[0] ?? none, ...noHours, why: '' };
  const counted = left.measure === 'hours' ? byHours(left, facts) : byCycles(left, facts);
  const { dueOn, earliest, latest, overdue } = firstLimit([...byDay, { ...none, ...counted.day }]);
  return { ...counted, limit: { ...named, dueOn, earliest, latest, overdue } };
}

const noHours = { dueHoursTenths: 'unknown', hoursLeftTenths: 'unknown' } as const;
type Counted = Omit<SourceDue, 'limit'> & {
  day: Partial<Pick<DueByLimit, 'dueOn' | 'earliest' | 'latest' | 'overdue'>>;
};

function byHours(left: CountLeft, facts: DueFacts): Counted {
  const flown = projected(left, facts);
  const { dueOn, earliest, latest, overdue, dueHoursTenths, hoursLeftTenths } = flown;
  return {
    day: { dueOn, earliest, latest, overdue },
    ...{ dueHoursTenths, hoursLeftTenths },
    why: dueOn === 'unknown' ? undated(facts) : '',
  };
}

/** Cycles name no hours on the meter; their own figures are told. */
function byCycles(left: CountLeft, facts: DueFacts): Counted {
  const due = cyclesDue(left, facts);
  if ('why' in due) return { day: {}, ...noHours, why: `Its cycles have no date: ${due.why}.` };
  const { dueDate: dueOn, earliest, latest, overdue, basis } = due;
  return { day: { dueOn, earliest, latest, overdue }, ...noHours, why: basis };
}

/** The time between overhauls where something else comes before it. */
function behind({ basis, dueOn }: DueReply, { what }: DueByLimit): string[] {
  const rest = basis.replace(
    /^(No date can be given\.|The (calendar|hour) limit governs(\.|:.*? on the meter\.)) ?/,
    '',
  );
  return [
    `What comes first: ${what}.`,
    dueOn === 'unknown' ? '' : `The time between overhauls ends on ${dueOn}.`,
    rest,
  ];
}

function undated({ overhaulOn }: DueFacts): string {
  return overhaulOn === null
    ? 'Its hours have no date, as no overhaul is on record to count the flying from.'
    : 'Its hours have no date by what is known of its flying.';
}

/**
 * When so many hours will have been flown after a day, by the same projection as the time between overhauls: both count from the overhaul,
 * and what had been flown since by that day is what is known at least, never too much and so never too late.
 */
function projected({ count, on }: CountLeft, facts: DueFacts): DueReply {
  const by = (facts.flownBy ?? []).filter((paper) => paper.on <= on).map(({ tenths }) => tenths);
  const hoursTenths = count + Math.max(0, ...by);
  const rule = { revision: '', hoursTenths, months: null, endOfMonth: false, requirement: 'required' };
  return dueOfUnit({ ...facts, rules: [rule], doubts: [] });
}

function least(values: readonly Tenths[]): Tenths {
  const known = values.filter((value) => value !== 'unknown');
  return known.length === 0 ? 'unknown' : Math.min(...known);
}
