import { type StandIn, usableFor } from '@hubwright/rules/stock';
import type { Ask } from './ask.ts';

/** A link of the alternates, by the ids of its parts. */
export interface AlternateRow extends Omit<StandIn, 'from'> {
  readonly from: string | null;
}

/** Which parts may serve which, on the day of a build. */
export interface StandIns {
  /** The parts that may serve a need, in the order in which they are taken; without a day all that ever may. */
  parts(partId: string, day?: string): string[];
  /** Parts of which nothing may be left before `usedId` is taken for a need. */
  usedUpFirst(asked: { partId: string; usedId: string; day: string }): string[];
}

// Links in both directions, since some go two ways, and on through whole chains.
const linksSql = `
  WITH RECURSIVE reach(id) AS (
    SELECT unnest($1::uuid[])
    UNION SELECT CASE WHEN a.part_id = r.id THEN a.use_id ELSE a.part_id END
      FROM reach r JOIN part_alternates a ON a.part_id = r.id OR a.use_id = r.id)
  SELECT part_id AS part, use_id AS use, two_way AS "twoWay", supersedes, effectivity, from_date::text AS "from"
  FROM part_alternates WHERE part_id IN (SELECT id FROM reach) ORDER BY part_id, preference`;

/** Every link that these parts may be served by, near or far. */
export function alternateLinks(ask: Ask, partIds: readonly string[]): Promise<AlternateRow[]> {
  return ask<AlternateRow>(linksSql, [[...new Set(partIds)]]);
}

export async function standIns(ask: Ask, partIds: readonly string[]): Promise<StandIns> {
  return standInsOf(await alternateLinks(ask, partIds));
}

/** Asked for thousands of lines: worked out once for a part, and for a day only where a link has one. */
export function standInsOf(rows: readonly AlternateRow[]): StandIns {
  const links = rows.map(({ from, ...link }) => ({ ...link, ...(from ? { from } : {}) }));
  const dated = links.some(({ effectivity }) => effectivity === 'from-date');
  const linked = new Set(links.flatMap(({ part, use }) => [part, use]));
  const known = new Map<string, ReturnType<typeof usableFor>>();
  const usable = (partId: string, day: string | undefined) => {
    const key = dated ? `${partId} ${day ?? ''}` : partId;
    const before = known.get(key);
    if (before) return before;
    const now = usableFor(partId, links, day);
    known.set(key, now);
    return now;
  };
  return {
    parts: (partId, day) => (linked.has(partId) ? usable(partId, day).parts : [partId]),
    usedUpFirst: ({ partId, usedId, day }) => (linked.has(partId) ? usable(partId, day).usedUpFirst(usedId) : []),
  };
}

/** The day a kit is built: its need date, or today when that has passed. */
export function buildDay(needBy: string, today: string): string {
  return needBy < today ? today : needBy;
}
