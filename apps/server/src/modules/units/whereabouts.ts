import { fromDbDate } from '../../platform/database/dates.ts';
import type { TimeFacts, Visit } from './time-facts.ts';

interface Where {
  readonly words: string;
  readonly path: string | null;
}

interface Asked {
  readonly item: { readonly id: string; readonly kind: string };
  readonly asOf: string;
  readonly names: ReadonlyMap<string, string>;
}

/** Where an item was on a day: in the shop on an order, on an aircraft, in an assembly, or out there as far as anybody said. */
export function whereabouts(facts: TimeFacts, { item, asOf, names }: Asked): Where {
  const sat = (facts.sat.get(item.id) ?? []).findLast(
    ({ from, to }) => from <= asOf && (to === undefined || asOf < to),
  );
  if (!sat && item.kind === 'assembly') return ofUnit(facts, item.id, { asOf, names });
  if (!sat) return { words: 'In no unit on record', path: null };
  const parent = { id: sat.parentId, kind: facts.kinds.get(sat.parentId) ?? 'assembly' };
  const around = whereabouts(facts, { item: parent, asOf, names });
  return {
    words: `At ${sat.position} of ${names.get(sat.parentId) ?? 'a unit'}, which is ${lower(around.words)}`,
    path: around.path ?? `/units/${sat.parentId}`,
  };
}

function ofUnit(facts: TimeFacts, unitId: string, { asOf, names }: Omit<Asked, 'item'>): Where {
  const visit = facts.visits.get(unitId)?.findLast((one) => one.receivedOn <= asOf);
  if (visit && (visit.leftOn === null || asOf < visit.leftOn))
    return { words: `In the shop on ${visit.number}`, path: `/work-orders/${visit.id}` };
  const row = facts.intervals
    .get(unitId)
    ?.findLast(
      ({ fromDate, toDate }) => fromDbDate(fromDate) <= asOf && (toDate === null || asOf < fromDbDate(toDate)),
    );
  if (row) {
    const place = row.position === 'single' ? 'On' : `On the ${row.position} of`;
    return { words: `${place} ${names.get(row.aircraftId) ?? ''} since ${fromDbDate(row.fromDate)}`, path: null };
  }
  return { words: outThere(facts, unitId, { visit, asOf }), path: null };
}

function outThere(
  facts: TimeFacts,
  unitId: string,
  { visit, asOf }: { visit: Visit | undefined; asOf: string },
): string {
  const last = facts.intervals.get(unitId)?.findLast(({ toDate }) => toDate && fromDbDate(toDate) <= asOf);
  if (last?.toDate && fromDbDate(last.toDate) > (visit?.leftOn ?? ''))
    return `Off the aircraft since ${fromDbDate(last.toDate)}`;
  return visit
    ? `Out since ${visit.leftOn} by ${visit.number}; nobody reported an installation`
    : 'Nobody reported where';
}

function lower(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
