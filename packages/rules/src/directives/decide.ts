import { addDays, isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';
import { type Concerned, concernedBy } from './applies.ts';
import type {
  Directive,
  DirectiveAsked,
  DirectiveItem,
  DirectiveRecord,
  DirectiveUnit,
  DirectiveVerdict,
} from './directive.ts';
import { firstStanding } from './first-window.ts';
import { recurringStanding } from './until.ts';

type Standing = Pick<DirectiveVerdict, 'state' | 'reason' | 'until'>;

/**
 * How one directive stands for one unit on a day: a verdict for each item it concerns, or one that it concerns none. `records` are those
 * of the unit and its parts, in the order they were recorded; where nobody can tell, it is undecided and says why.
 *
 * 14 CFR 39.5 to 39.11: a directive is a rule for the products it names; 39.15: it applies also to one that was changed, so no part
 * fitted instead takes a unit out by itself. 14 CFR 91.417(a)(2)(v): the status names method, number, revision and when it is next due.
 * Interval and whichever comes first are the directive's own words; that equal hours are due is common practice, no source.
 *
 * Throws RuleError `not-a-date`, `no-interval` for a recurring one that names none, `bad-range`.
 *
 * @example decideDirective(directive, unit, [], { asOf: '2026-03-02', visit: null }) // [{ …, state: 'open', reason: 'It applies and is not done' }]
 */
export function decideDirective(
  directive: Directive,
  of: DirectiveUnit,
  { records, asked }: { records: readonly DirectiveRecord[]; asked: DirectiveAsked },
): DirectiveVerdict[] {
  refuseBad(directive, asked);
  const { itemId, name } = of.unit;
  const none = (reason: string) => [{ itemId, name, state: 'not-applicable' as const, reason, until: null }];
  const { withdrawnOn } = directive;
  if (withdrawnOn !== null && withdrawnOn <= asked.asOf) return none(`Withdrawn on ${withdrawnOn}`);
  const successor = directive.supersededBy.find(({ effectiveOn }) => effectiveOn <= asked.asOf);
  if (successor) return none(`Superseded by ${successor.number}`);
  const concerned = concernedBy(directive, of);
  if (concerned.length === 0) return none('It names neither this unit nor a part on record in it');
  return concerned.map((one) => ({
    ...{ itemId: one.item.itemId, name: one.item.name },
    ...standingOf(directive, one, { records, asked }),
  }));
}

function standingOf(
  directive: Directive,
  { item, look }: Concerned,
  { records, asked }: { records: readonly DirectiveRecord[]; asked: DirectiveAsked },
): Standing {
  const own = standingRecords(records, { itemId: item.itemId, of: [directive.id, ...directive.credits] });
  const done = lastDone(own);
  if (!done && look !== null) {
    const decided = own.findLast(
      ({ directiveId, outcome }) => directiveId === directive.id && outcome === 'does-not-apply',
    );
    if (decided) return { state: 'not-applicable', reason: `Decided on ${decided.on}: it does not apply`, until: null };
    return { state: 'undecided', reason: `Look: ${look}`, until: null };
  }
  if (directive.effectiveOn > asked.asOf && !done)
    return { state: 'not-due', reason: `In force from ${directive.effectiveOn}`, until: null };
  const ended = endedBy(directive, item, records);
  if (ended) return ended;
  const standing = done ? afterWork(directive, { done, item, asked }) : undefined;
  if (standing?.state === 'complied') return standing;
  return deferred(directive, own, asked) ?? standing ?? notDone(directive, { item, asked, own });
}

/** Records of these directives on an item that stand: whatever came before one was taken back counts no more. */
function standingRecords(
  records: readonly DirectiveRecord[],
  { itemId, of }: { itemId: string; of: readonly string[] },
): DirectiveRecord[] {
  return of.flatMap((id) => {
    const all = records.filter((record) => record.itemId === itemId && record.directiveId === id);
    return all.slice(all.findLastIndex(({ outcome }) => outcome === 'taken-back') + 1);
  });
}

function isDone({ outcome }: DirectiveRecord): boolean {
  return outcome === 'done' || outcome === 'found-done';
}

function lastDone(records: readonly DirectiveRecord[]): DirectiveRecord | undefined {
  return records
    .filter(isDone)
    .reduce<DirectiveRecord | undefined>(
      (latest, record) => (latest === undefined || record.on >= latest.on ? record : latest),
      undefined,
    );
}

function endedBy(directive: Directive, item: DirectiveItem, records: readonly DirectiveRecord[]): Standing | undefined {
  const own = standingRecords(records, { itemId: item.itemId, of: [directive.id] }).find(
    (record) => isDone(record) && record.terminating,
  );
  const other = standingRecords(records, { itemId: item.itemId, of: directive.endedBy }).find(isDone);
  const ending = own ?? other;
  return ending && { state: 'terminated', reason: `The terminating action was done on ${ending.on}`, until: null };
}

function afterWork(
  directive: Directive,
  { done, item, asked }: { done: DirectiveRecord; item: DirectiveItem; asked: DirectiveAsked },
): Standing | undefined {
  const isSameVisit = done.workOrderId === asked.visit?.workOrderId && done.outcome === 'done';
  if (directive.repeats === 'recurring')
    return recurringStanding(directive, { done, item, asked: { asOf: asked.asOf, isSameVisit } });
  if (directive.repeats === 'at-overhaul' && asked.visit?.isOverhaul && !isSameVisit) return undefined;
  const until = directive.repeats === 'at-overhaul' ? '; again at the next overhaul' : '';
  return { state: 'complied', reason: `Done on ${done.on}${until}`, until: null };
}

/** A deferral holds where it is the newest word since the work was last done. */
function deferred({ id }: Directive, own: readonly DirectiveRecord[], { asOf }: DirectiveAsked): Standing | undefined {
  const newest = own.filter(({ directiveId }) => directiveId === id).at(-1);
  if (newest?.outcome !== 'deferred' || newest.until === null || newest.until < asOf) return undefined;
  const until = { date: newest.until, hoursTenths: null };
  return { state: 'deferred', reason: `Put off until ${newest.until}`, until };
}

function notDone(
  directive: Directive,
  { item, asked, own }: { item: DirectiveItem; asked: DirectiveAsked; own: readonly DirectiveRecord[] },
): Standing {
  if (directive.repeats === 'at-overhaul' && !asked.visit?.isOverhaul)
    return { state: 'not-due', reason: 'Due at the next overhaul', until: null };
  const waits = firstStanding(directive, item, asked.asOf);
  if (waits) return waits;
  const lapsed = own.findLast(({ outcome }) => outcome === 'deferred');
  const reason = lapsed?.until ? `The deferral ended on ${lapsed.until}` : 'It applies and is not done';
  return { state: 'open', reason, until: null };
}

/** The last day until which it may be put off now: so many days from the first deferral in a row. */
export function lastDayOfDeferral(
  directive: { readonly id: string; readonly deferDays: number },
  { records, itemId, asOf }: { records: readonly DirectiveRecord[]; itemId: string; asOf: string },
): string {
  const own = standingRecords(records, { itemId, of: [directive.id] });
  const sinceDone = own.slice(own.findLastIndex(isDone) + 1);
  const first = sinceDone.find(({ outcome }) => outcome === 'deferred');
  return addDays(first?.on ?? asOf, directive.deferDays);
}

/** What of several directives comes first: the earliest day and the fewest hours since new of those that come again. */
export function firstDue(verdicts: readonly Pick<DirectiveVerdict, 'until'>[]): {
  date: string | null;
  hoursTenths: number | null;
} {
  const dates = verdicts.flatMap(({ until }) => until?.date ?? []).sort();
  const hours = verdicts.flatMap(({ until }) => until?.hoursTenths ?? []).sort((a, b) => a - b);
  return { date: dates[0] ?? null, hoursTenths: hours[0] ?? null };
}

function refuseBad({ repeats, everyHoursTenths, everyMonths, effectiveOn }: Directive, { asOf }: DirectiveAsked): void {
  if (!isDate(asOf)) throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', 'asked.asOf');
  if (!isDate(effectiveOn))
    throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', 'directive.effectiveOn');
  if (repeats === 'recurring' && everyHoursTenths === null && everyMonths === null)
    throw new RuleError('no-interval', 'A recurring directive says how often', 'directive.everyMonths');
}
