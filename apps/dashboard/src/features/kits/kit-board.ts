import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { type RowOf, usePages } from '../../api/pages.ts';

export type KitRow = RowOf<typeof kitsOperations.kitBoard>;

/** Open kits by need date, page by page: most shops have them all on the first. */
export const useBoard = () => usePages(kitsOperations.kitBoard, { state: 'open' });

/** What leaves of the board as a file. */
export const boardColumns = [
  { header: 'Kit', value: (kit: KitRow) => kit.code },
  { header: 'Work order', value: (kit: KitRow) => kit.workOrder.number },
  { header: 'Unit', value: (kit: KitRow) => kit.workOrder.unit },
  { header: 'Customer', value: (kit: KitRow) => kit.workOrder.customer },
  { header: 'Needed by', value: (kit: KitRow) => kit.needBy },
  { header: 'Lines', value: (kit: KitRow) => kit.lines },
  { header: 'Pulled', value: (kit: KitRow) => kit.issued },
  { header: 'Have', value: (kit: KitRow) => kit.have },
  { header: 'On order', value: (kit: KitRow) => kit.onOrder },
  { header: 'Late', value: (kit: KitRow) => kit.late },
  { header: 'Short', value: (kit: KitRow) => kit.short },
  { header: 'Whole on', value: (kit: KitRow) => kit.wholeOn },
];

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
