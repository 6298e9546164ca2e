import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { ForeseenKind } from '@hubwright/rules/foreseen';
import type { ForeseenCover, ForeseenMonth } from './foreseen-cover.ts';

const names = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

const tenths = (quantity: number) => Math.round(quantity * 10) / 10;
const sum = (months: readonly ForeseenMonth[], of: 'quantity' | 'pieces' | 'short') =>
  months.reduce((total, month) => total + month[of], 0);

/** What is expected in all, and what of it nothing covers. */
export function expectedOf(cover: ForeseenCover) {
  const { months } = cover;
  const needs = months.map(({ needBy }) => needBy).sort();
  const days = months.flatMap(({ orderBy }) => (orderBy ? [orderBy] : [])).sort();
  return {
    quantity: tenths(sum(months, 'quantity')),
    pieces: sum(months, 'pieces'),
    short: sum(months, 'short'),
    firstNeed: (months.find(({ short }) => short > 0)?.needBy ?? needs[0]) as string,
    orderBy: days[0] ?? null,
    sentences: (['due', 'finding'] as const).flatMap((kind) => sentenceOf(cover, kind)),
  };
}

/** “8.4 × TS-20 seal expected for 6 units coming due, Jan–Mar 2027; 3 of 8 planned are not covered.” */
export function sentenceOf({ part, months, units }: ForeseenCover, kind: ForeseenKind): string[] {
  const mine = months.filter((month) => month.kind === kind);
  const quantity = sum(mine, 'quantity');
  // Less than a twentieth of a piece is nothing to tell.
  if (quantity < 0.05) return [];
  const count = units[kind];
  const [pieces, short] = [sum(mine, 'pieces'), sum(mine, 'short')];
  const whose =
    kind === 'due'
      ? `for ${count} ${count === 1 ? 'unit' : 'units'} coming due`
      : `by findings in ${count} ${count === 1 ? 'unit' : 'units'}`;
  const stand = short > 0 ? `${short} of ${pieces} planned are not covered` : pieces > 0 ? 'covered' : 'none planned';
  return [`${partWords(tenths(quantity), part)} expected ${whose}, ${monthsOf(mine)}; ${stand}.`];
}

function monthsOf(months: readonly ForeseenMonth[]): string {
  const sorted = months.map(({ month }) => month).sort();
  const [first = '', last = ''] = [sorted[0], sorted.at(-1)];
  const named = (month: string) => names[Number(month.slice(5, 7)) - 1] ?? '';
  const [from, to] = [first.slice(0, 4), last.slice(0, 4)];
  if (first === last) return `${named(first)} ${from}`;
  return from === to ? `${named(first)}–${named(last)} ${to}` : `${named(first)} ${from} – ${named(last)} ${to}`;
}
