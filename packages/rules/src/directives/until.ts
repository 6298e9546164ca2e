import { addMonths, endOfMonth } from '../dates/index.ts';
import {
  type Directive,
  type DirectiveItem,
  type DirectiveRecord,
  type DirectiveVerdict,
  hoursAtLeast,
} from './directive.ts';

type Standing = Pick<DirectiveVerdict, 'state' | 'reason' | 'until'>;

/**
 * How a recurring directive stands after work was done: complied until the day or the hours since new, whichever comes first. At its
 * hours it is due, as nobody flies on them; on its day it is still good. Hours that nobody knows are never taken for few.
 */
export function recurringStanding(
  directive: Directive,
  { done, item, asked }: { done: DirectiveRecord; item: DirectiveItem; asked: { asOf: string; isSameVisit: boolean } },
): Standing {
  const until = dueAgain(directive, done);
  const { hoursTenths: now } = item;
  if (until.date !== null && asked.asOf > until.date)
    return { state: 'open', reason: `Fell due again on ${until.date}`, until };
  if (until.hoursTenths !== null && hoursAtLeast(item) >= until.hoursTenths)
    return { state: 'open', reason: `Fell due again at ${hours(until.hoursTenths)} since new`, until };
  const reason = `Done on ${done.on}; again ${whenAgain(directive, until)}`;
  const areHoursKnown = directive.everyHoursTenths === null || (until.hoursTenths !== null && now !== 'unknown');
  // Done on this very visit nothing was flown since, known hours or not.
  if (areHoursKnown || asked.isSameVisit) return { state: 'complied', reason, until };
  return {
    state: 'undecided',
    reason: `Done on ${done.on}; the hours flown since are unknown, and it comes every ${hours(directive.everyHoursTenths ?? 0)}`,
    until,
  };
}

function dueAgain({ everyHoursTenths, everyMonths, endOfMonth: toMonthEnd }: Directive, done: DirectiveRecord) {
  const month = everyMonths === null ? null : addMonths(done.on, everyMonths);
  return {
    date: month !== null && toMonthEnd ? endOfMonth(month) : month,
    hoursTenths:
      everyHoursTenths === null || done.hoursTenths === 'unknown' ? null : done.hoursTenths + everyHoursTenths,
  };
}

function whenAgain(
  { everyHoursTenths }: Directive,
  until: { date: string | null; hoursTenths: number | null },
): string {
  const byHours =
    until.hoursTenths !== null
      ? [`at ${hours(until.hoursTenths)} since new`]
      : everyHoursTenths === null
        ? []
        : [`after ${hours(everyHoursTenths)}`];
  const byDay = until.date === null ? [] : [`after ${until.date}`];
  return whichever([...byHours, ...byDay]);
}

export function whichever(words: readonly string[]): string {
  return words.length > 1 ? `${words.join(' or ')}, whichever comes first` : words.join('');
}

export function hours(tenths: number): string {
  return `${Math.floor(tenths / 10)}.${tenths % 10} h`;
}
