import { directiveOperations } from '@hubwright/contracts/directives/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';
import { formatHours } from '../../format/numbers.ts';
import type { State } from '../../ui/StateMark.tsx';

export type DirectiveRow = Reply<typeof directiveOperations.listDirectives>['rows'][number];
export type Standing = Reply<typeof directiveOperations.workOrderDirectives>['standings'][number];

export const directiveKindTitles: Record<DirectiveRow['kind'], string> = {
  'airworthiness-directive': 'Airworthiness directive',
  'service-bulletin': 'Service bulletin',
};

export const repeatTitles: Record<DirectiveRow['repeats'], string> = {
  'one-time': 'Once',
  recurring: 'Again and again',
  'at-overhaul': 'At every overhaul',
};

/** How a state looks: shape and word. */
export const stateLooks: Record<Standing['state'], { state: State; word: string }> = {
  open: { state: 'stop', word: 'open' },
  undecided: { state: 'hold', word: 'look' },
  deferred: { state: 'waiting', word: 'put off' },
  complied: { state: 'passed', word: 'complied with' },
  terminated: { state: 'passed', word: 'ended for good' },
  'not-due': { state: 'open', word: 'not due yet' },
  'not-applicable': { state: 'note', word: 'does not apply' },
};

export const standingsQuery = (of: { workOrderId: string } | { unitId: string }) =>
  'workOrderId' in of
    ? queryFor(directiveOperations.workOrderDirectives, of)
    : queryFor(directiveOperations.unitDirectives, of);

export function calledOf({ number, revision }: { number: string; revision: string }): string {
  return revision === 'original' ? number : `${number} rev. ${revision}`;
}

/** How often, in words. */
export function oftenWords({ repeats, everyHoursTenths, everyMonths, endOfMonth }: DirectiveRow): string {
  if (repeats !== 'recurring') return repeatTitles[repeats];
  const hours = everyHoursTenths === null ? [] : [formatHours(everyHoursTenths)];
  const months = everyMonths === null ? [] : [`${everyMonths} months${endOfMonth ? ', to the month’s end' : ''}`];
  return `Every ${[...hours, ...months].join(' or ')}`;
}

/** Until when it may wait for the first time, in words; empty where it is due at once. */
export function firstWords({ firstDays, firstMonths, firstHoursTenths, firstTotalTenths }: DirectiveRow): string {
  return [
    firstDays === null ? '' : `${firstDays} days`,
    firstMonths === null ? '' : `${firstMonths} months`,
    firstHoursTenths === null ? '' : formatHours(firstHoursTenths),
    firstTotalTenths === null ? '' : `at ${formatHours(firstTotalTenths)} since new`,
  ]
    .filter((words) => words !== '')
    .join(' or ');
}

/** To what it applies, a line of it. */
export function lineWords({ model, partNumber, serialFrom, serialTo }: DirectiveRow['lines'][number]): string {
  const what = [model?.designation, partNumber === null ? null : `part ${partNumber}`].filter(Boolean).join(' with ');
  if (serialFrom === null && serialTo === null) return `${what}, every serial`;
  return serialTo === null
    ? `${what}, serial ${serialFrom} and on`
    : `${what}, serial ${serialFrom ?? 'first'} to ${serialTo}`;
}
