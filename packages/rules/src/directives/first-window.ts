import { addDays, addMonths } from '../dates/index.ts';
import { type Directive, type DirectiveItem, type DirectiveVerdict, hoursAtLeast } from './directive.ts';
import { hours, whichever } from './until.ts';

type Standing = Pick<DirectiveVerdict, 'state' | 'reason' | 'until'>;

/**
 * How a directive stands that was never done and gives a time for its first action: days or months from the day it is in force, hours flown
 * after that day, or a total since new, whichever comes first. On its last day it is still good; at its hours it is due, as nobody flies on them.
 * The hours on the day it came into force are the last on record up to then: never more than there were, so it never falls due too late.
 * Undefined where the directive gives no such time.
 *
 * That compliance times count from the effective date in hours, days or months is how directives read (14 CFR 39.11 asks for action within
 * the directive's own times); that equal hours are due is common practice, no source.
 */
export function firstStanding(directive: Directive, item: DirectiveItem, asOf: string): Standing | undefined {
  const { days, months, hoursTenths, totalTenths } = directive.first;
  if ([days, months, hoursTenths, totalTenths].every((one) => one === null)) return undefined;
  const until = firstUntil(directive, item);
  const { hoursTenths: now } = item;
  if (until.date !== null && asOf > until.date)
    return { state: 'open', reason: `It was to be done by ${until.date}`, until };
  if (until.hoursTenths !== null && hoursAtLeast(item) >= until.hoursTenths)
    return { state: 'open', reason: `It was to be done before ${hours(until.hoursTenths)} since new`, until };
  const byHours = hoursTenths !== null || totalTenths !== null;
  if (byHours && (now === 'unknown' || (hoursTenths !== null && atStart(directive, item) === undefined)))
    return {
      state: 'undecided',
      reason: `It is to be done ${wordsOf(directive, until)}, and its hours since new are not known`,
      until,
    };
  return { state: 'not-due', reason: `First to be done ${wordsOf(directive, until)}`, until };
}

function firstUntil(directive: Directive, item: DirectiveItem) {
  const { days, months, hoursTenths, totalTenths } = directive.first;
  const dates = [
    ...(days === null ? [] : [addDays(directive.effectiveOn, days)]),
    ...(months === null ? [] : [addMonths(directive.effectiveOn, months)]),
  ].sort();
  const began = atStart(directive, item);
  const totals = [
    ...(hoursTenths === null || began === undefined ? [] : [began + hoursTenths]),
    ...(totalTenths === null ? [] : [totalTenths]),
  ];
  return { date: dates[0] ?? null, hoursTenths: totals.length === 0 ? null : Math.min(...totals) };
}

function atStart({ effectiveOn }: Directive, { earlier = [] }: DirectiveItem): number | undefined {
  return earlier.findLast(({ on }) => on <= effectiveOn)?.hoursTenths;
}

function wordsOf({ first }: Directive, until: { date: string | null; hoursTenths: number | null }): string {
  const within = first.hoursTenths === null ? '' : `within ${hours(first.hoursTenths)} of its coming into force`;
  return whichever([
    ...(until.hoursTenths !== null ? [`before ${hours(until.hoursTenths)} since new`] : within === '' ? [] : [within]),
    ...(until.date === null ? [] : [`by ${until.date}`]),
  ]);
}
