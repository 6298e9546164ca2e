import type { KitRow } from './kits.sql.ts';
import type { LineCover } from './line-cover.ts';

/** One kit on the board: lines counted by how they stand, and what matters first in a sentence. */
export function boardRow({ acceptedSources: _, ...kit }: KitRow, covers: readonly LineCover[]) {
  const count = (...standings: string[]) => covers.filter(({ standing }) => standings.includes(standing)).length;
  const short = count('short');
  const late = count('late');
  const onOrder = count('on-order');
  const have = count('have', 'reserved');
  return {
    ...kit,
    issued: count('in-tray', 'installed'),
    have,
    onOrder,
    late,
    short,
    orderBy: first(covers.map(({ orderBy }) => orderBy)),
    wholeOn: wholeOn(covers),
    canFillNow: have > 0 && short + late + onOrder === 0,
    sentence: worst(covers),
    likely: covers[0]?.likely ?? null,
  };
}

function first(days: readonly (string | null)[]): string | null {
  return days.flatMap((day) => (day ? [day] : [])).sort()[0] ?? null;
}

/** The last day on which something arrives; a kit that waits for nothing is whole on the day it is needed. */
function wholeOn(covers: readonly LineCover[]): string {
  if (covers.some(({ short }) => short > 0)) return 'never';
  const days = covers.flatMap(({ coveredOn, row }) => [coveredOn ?? row.needBy]).sort();
  return days.at(-1) ?? 'never';
}

/** Of what is short, what must be ordered first; else what comes last. */
function worst(covers: readonly LineCover[]): string {
  const named = covers.filter(({ sentence }) => sentence !== '');
  const byUrgency = (a: LineCover, b: LineCover) => {
    if (a.short > 0 !== b.short > 0) return a.short > 0 ? -1 : 1;
    return (a.orderBy ?? '9999').localeCompare(b.orderBy ?? '9999');
  };
  return named.sort(byUrgency)[0]?.sentence ?? '';
}
