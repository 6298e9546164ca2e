import { addMonths, compareDates } from '../dates/index.ts';
import { serialPlace } from '../directives/index.ts';

/** For which units an interval of a manual revision holds; null where it does not ask. */
export interface TboCondition {
  readonly applicationId: string | null;
  readonly serialFrom: string | null;
  readonly serialTo: string | null;
  readonly useCategory: string | null;
  readonly ageFromMonths: number | null;
  readonly ageToMonths: number | null;
}

/** What is known of a unit; null where nobody said or read it. */
export interface TboUnit {
  readonly serial: string | null;
  readonly use: string | null;
  readonly madeOn: string | null;
  /** The day its interval runs from. */
  readonly overhauledOn: string | null;
}

export interface RulesInForce<Rule> {
  readonly rules: Rule[];
  /** Why a rule counts although nobody can tell whether it holds for this unit, each in a sentence. */
  readonly doubts: string[];
}

/**
 * The intervals that count for a unit. Rules for its application take the place of the general ones, and among those rules for its use the
 * place of rules for every use. A rule for other serials or another age is left out. Whatever cannot be told counts, so that no doubt ever
 * moves a due date later: a serial that cannot be compared, an age nobody knows, and while the use is not said the rules for every use
 * together with those for each of them. Age is that on the day of the overhaul the interval runs from (chosen, no source: a manual that
 * says otherwise decides).
 *
 * @example rulesInForce([normal72, agricultural48], { use: null, … }) // both, and "A limit for agricultural use counts, …"
 */
export function rulesInForce<Rule extends TboCondition>(all: readonly Rule[], unit: TboUnit): RulesInForce<Rule> {
  const possible = all.filter((rule) => placeOf(rule, unit) !== 'out' && ageOf(rule, unit) !== 'out');
  const own = possible.filter(({ applicationId }) => applicationId !== null);
  const rules = byUse(own.length > 0 ? own : possible, unit);
  return { rules, doubts: [...new Set(rules.flatMap((rule) => doubtsOf(rule, unit)))] };
}

function byUse<Rule extends TboCondition>(rules: Rule[], { use }: TboUnit): Rule[] {
  if (use === null) return rules;
  const own = rules.filter(({ useCategory }) => useCategory === use);
  const general = rules.filter(({ useCategory }) => useCategory === null);
  if (own.length > 0) return own;
  // Rules for other uses only: that the manual forgot this one is no reason for no limit at all.
  return general.length > 0 ? general : rules;
}

function placeOf({ serialFrom, serialTo }: TboCondition, { serial }: TboUnit) {
  return serialPlace(serial, {
    ...(serialFrom === null ? {} : { from: serialFrom }),
    ...(serialTo === null ? {} : { to: serialTo }),
  });
}

function ageOf({ ageFromMonths, ageToMonths }: TboCondition, unit: TboUnit): 'in' | 'out' | 'look' {
  if (ageFromMonths === null && ageToMonths === null) return 'in';
  const { madeOn, overhauledOn } = unit;
  if (madeOn === null || overhauledOn === null) return 'look';
  const isAged = (months: number) => compareDates(overhauledOn, addMonths(madeOn, months)) >= 0;
  if (ageFromMonths !== null && !isAged(ageFromMonths)) return 'out';
  return ageToMonths !== null && isAged(ageToMonths) ? 'out' : 'in';
}

function doubtsOf(rule: TboCondition, unit: TboUnit): string[] {
  const { serialFrom, serialTo, useCategory } = rule;
  const range = `${serialFrom ?? 'the first'} to ${serialTo ?? 'the last'}`;
  return [
    ...(placeOf(rule, unit) === 'look'
      ? [`A limit for serials ${range} counts, as the serial cannot be compared.`]
      : []),
    ...(useCategory !== null && unit.use === null
      ? [`A limit for ${useCategory} use counts, as nobody said how the unit is used: the strictest holds.`]
      : []),
    ...(useCategory !== null && unit.use !== null && useCategory !== unit.use
      ? [`A limit for ${useCategory} use counts, as the manual names none for ${unit.use} use.`]
      : []),
    ...(ageOf(rule, unit) === 'look'
      ? [`A limit for units ${ageWords(rule)} counts, as the day it was made is not on record.`]
      : []),
  ];
}

function ageWords({ ageFromMonths, ageToMonths }: TboCondition): string {
  const from = ageFromMonths === null ? '' : `from ${ageFromMonths} months`;
  const to = ageToMonths === null ? '' : `below ${ageToMonths} months`;
  return `${[from, to].filter((words) => words !== '').join(' and ')} of age`;
}
