import { wholePieces } from '@hubwright/rules/foreseen';
import type { SuggestInput } from '@hubwright/rules/replenishment';
import type { ForeseenCover, KitCover, LineCover } from '../kits/public.ts';

type Shortages = SuggestInput['shortages'];

/** All that asks for a part, or for one it has taken the place of. */
export interface Demand {
  /** Lines of open kits that are short of it. */
  readonly short: readonly LineCover[];
  readonly foreseen: readonly ForeseenCover[];
  readonly shortages: Shortages;
  /** What kits and the lists of expected units take of what is here and on order. */
  readonly taken: number;
}

/** What asks for the parts of `covers`, from one state of the kept answer. */
export function demandOf(state: Awaited<ReturnType<KitCover['kept']>>): (partIds: readonly string[]) => Demand {
  return (partIds) => {
    const lines = partIds.flatMap((partId) => [...state.ofPart(partId)]);
    const short = lines.filter((line) => line.short > 0).sort(byNeed);
    const foreseen = partIds.flatMap((partId) => state.foreseenOf(partId) ?? []);
    const lists = foreseen.flatMap(({ months }) => months.filter(({ kind }) => kind === 'due'));
    const taken =
      lines.reduce((sum, { have, onOrder }) => sum + have + onOrder, 0) +
      lists.reduce((sum, month) => sum + month.pieces - month.short, 0);
    return { short, foreseen, taken, shortages: [...ofKits(short), ...expected(foreseen)] };
  };
}

const byNeed = (one: LineCover, other: LineCover) => (one.row.needBy < other.row.needBy ? -1 : 1);

/** Approved work asks for all it needs; likely work, weighed by its odds, for whole pieces over all its lines. */
function ofKits(short: readonly LineCover[]): Shortages {
  const firm = short.filter(({ likely }) => likely === null);
  const likely = short.filter((line) => line.likely !== null);
  const weighed = wholePieces(likely.map((line) => (line.short * (line.likely ?? 0)) / 100));
  return [
    ...firm.map(({ row, short: quantity }) => ({ needBy: row.needBy, quantity, asker: 'kit' as const })),
    ...likely.map(({ row }, at) => ({ needBy: row.needBy, quantity: weighed[at] ?? 0, asker: 'likely' as const })),
  ];
}

function expected(foreseen: readonly ForeseenCover[]): Shortages {
  return foreseen.flatMap(({ months }) =>
    months.map(({ kind, needBy, short }) => ({ needBy, quantity: short, asker: kind })),
  );
}
