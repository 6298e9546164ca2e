import { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';

export type KitRow = Reply<typeof kitsOperations.kitBoard>['rows'][number];

/** Open kits by need date. Two hundred is more than a shop has in work; the server bounds it. */
export const boardQuery = queryFor(kitsOperations.kitBoard, { state: 'open', limit: 200 });

/** What a kit asks of the parts room now. */
export type KitAsks = 'pull' | 'order' | 'chase' | 'wait' | 'done';

/** The one thing that helps this kit most: order what is short, pull what is whole, chase what comes late, else wait. */
export function asksOf(kit: KitRow): KitAsks {
  if (kit.short > 0) return 'order';
  if (kit.canFillNow && kit.issued < kit.lines) return 'pull';
  if (kit.late > 0) return 'chase';
  return kit.issued >= kit.lines ? 'done' : 'wait';
}

export const boardFilters = ['all', 'now', 'stopped'] as const;
export type BoardFilter = (typeof boardFilters)[number];

/** Stopped this week: needed within seven days, and something of it is short or comes too late. */
export function isStopped(kit: KitRow, inAWeek: string): boolean {
  return kit.needBy <= inAWeek && kit.short + kit.late > 0;
}

export function kitsShown(kits: readonly KitRow[], filter: BoardFilter, inAWeek: string): readonly KitRow[] {
  if (filter === 'now') return kits.filter((kit) => asksOf(kit) === 'pull');
  if (filter === 'stopped') return kits.filter((kit) => isStopped(kit, inAWeek));
  return kits;
}
