import { fromDbDate } from '../../../platform/database/dates.ts';
import type { Standing } from '../../directives/public.ts';
import type { CountLeft, LimitSource } from './source.ts';

interface ItemTime {
  readonly hoursTenths: number;
  readonly on: string;
}

/**
 * Directives as limits: an open one fell due on its day, one that recurs or waits for its first action on the day or at the hours it says,
 * one put off at the end of that. What waits for an overhaul, or for somebody to look, has no date and is told.
 */
export function directiveSources(
  standings: readonly Standing[],
  timeOf: (itemId: string) => ItemTime | undefined,
): { limits: LimitSource[]; notes: string[] } {
  const told = standings.map((one) => sourceOf(one, timeOf(one.itemId)));
  return { limits: told.flatMap(({ limit }) => limit ?? []), notes: told.flatMap(({ note }) => note ?? []) };
}

function sourceOf(one: Standing, time: ItemTime | undefined): { limit?: LimitSource; note?: string } {
  const { state, until, reason, called, name, directive } = one;
  const said = `${called}, ${directive.title}, ${name}: ${reason}.`;
  const common = {
    kind: 'directive' as const,
    ...{ what: `${called}, ${directive.title}`, says: said },
    requirement: directive.binding === 'required' ? 'required' : 'recommended',
  } as const;
  // A bulletin that is only recommended is named; it makes nothing overdue.
  if (directive.binding !== 'required' && state === 'open') return { note: said };
  if (state === 'open')
    return {
      limit: { ...common, on: until?.date ?? fellDue(one, time) ?? fromDbDate(directive.effectiveOn), left: null },
    };
  if (state === 'undecided' && until === null) return { note: said };
  if (until === null) return state === 'not-due' ? { note: said } : {};
  const left = until.hoursTenths === null ? null : hoursLeft(until.hoursTenths, time);
  if (until.date === null && left === null) return { note: said };
  return { limit: { ...common, on: until.date, left } };
}

/** At its hours it fell due at the latest on the day they were recorded. */
function fellDue({ until }: Standing, time: ItemTime | undefined): string | undefined {
  return until?.hoursTenths != null && time ? time.on : undefined;
}

function hoursLeft(untilTenths: number, time: ItemTime | undefined): CountLeft | null {
  if (!time || untilTenths <= time.hoursTenths) return null;
  return { measure: 'hours', count: untilTenths - time.hoursTenths, on: time.on };
}
