import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import type { Reply } from '@hubwright/contracts/operation';
import type { FillKits } from '@hubwright/rules/allocation';
import type { StockRow } from './cover-rows.ts';
import type { CoverState } from './cover-state.ts';
import type { FillQuestion } from './fill.worker.ts';
import type { Worth } from './fill-worth.ts';
import type { KitRow } from './kits.sql.ts';
import type { LineCover } from './line-cover.ts';

/** The proposal, and every kit that is not in it: the list is read page by page. */
export interface FillReply {
  readonly proposal: Reply<typeof allocationOperations.kitsToFill>;
  readonly leftOut: Reply<typeof allocationOperations.kitsLeftOut>['rows'];
}

export interface Found {
  readonly state: CoverState;
  readonly currency: string;
  readonly kits: ReadonlyMap<string, { readonly kit: KitRow; readonly worth: Worth }>;
  readonly question: Omit<FillQuestion, 'ms'>;
  readonly answer: FillKits;
  readonly bins: ReadonlyMap<string, string>;
}

const mostLacks = 20;
/** As many as are accepted at once; the next are proposed when these are promised. */
const mostFilled = 60;

/** The proposal with its reasons: kits to fill best first, kits left out by need date. */
export function fillReply(found: Found): FillReply {
  const { state, answer, kits } = found;
  const byLine = new Map(state.all().map((cover) => [cover.row.lineId, cover]));
  const lots = new Map(state.supply().stock.map((lot) => [lot.id, lot]));
  const picks = new Map<string, ReturnType<typeof pickRow>[]>();
  for (const pick of answer.picks) {
    const kitId = byLine.get(pick.ask)?.row.kitId ?? '';
    picks.set(kitId, [...(picks.get(kitId) ?? []), pickRow(pick, { byLine, lots, bins: found.bins })]);
  }
  const chosen = answer.chosen.flatMap((id) => {
    const known = kits.get(id);
    return known ? [{ ...named(known), picks: picks.get(id) ?? [] }] : [];
  });
  const others = takersOf(found, byLine);
  const leftOut = answer.leftOut.flatMap(({ kit, isOutbid, lacks }) => {
    const known = kits.get(kit);
    if (!known) return [];
    const rows = lacks.flatMap(({ ask, quantity }) => lackRow(byLine.get(ask), quantity));
    return [
      {
        ...named(known),
        isOutbid,
        lacks: rows.slice(0, mostLacks),
        cause: isOutbid ? outbid(rows, others(lacks)) : lacking(rows),
      },
    ];
  });
  const proposal = {
    currency: found.currency,
    kits: chosen.sort((a, b) => b.value - a.value || a.needBy.localeCompare(b.needBy)).slice(0, mostFilled),
    fillable: chosen.length,
    leftOut: leftOut.length,
    value: answer.value,
    bound: answer.bound,
    isBest: answer.optimal,
    proof: proof(answer),
    promised: promisedKits(state),
  };
  return { proposal, leftOut };
}

function named({ kit, worth }: { kit: KitRow; worth: Worth }) {
  const { id, code, version, needBy, workOrder } = kit;
  return { kitId: id, code, version, needBy, workOrder, ...worth };
}

function pickRow(
  { ask, lot: lotId, quantity }: FillKits['picks'][number],
  known: {
    byLine: ReadonlyMap<string, LineCover>;
    lots: ReadonlyMap<string, StockRow>;
    bins: ReadonlyMap<string, string>;
  },
) {
  const row = known.byLine.get(ask)?.row;
  const lot = known.lots.get(lotId);
  if (!(row && lot)) throw new Error('A pick names a line and a lot that were asked about');
  return {
    ...{ lineId: ask, lotId, quantity, part: row.part, position: row.position, lotCode: lot.code },
    standIn: lot.partId === row.part.id ? null : lot.partNumber,
    bin: known.bins.get(lotId) ?? '',
  };
}

function lackRow(cover: LineCover | undefined, quantity: number) {
  if (!cover) return [];
  const { row, sentence, pegs } = cover;
  const coming = pegs.find(({ kind }) => kind === 'order');
  const judged = pegs.find(({ kind }) => kind === 'lot');
  const cause =
    sentence ||
    (coming
      ? `comes on ${coming.date} (${coming.code})`
      : judged
        ? `${judged.code} serves it`
        : 'not free on the shelf');
  return [{ lineId: row.lineId, part: row.part, position: row.position, quantity, cause }];
}

type Lack = ReturnType<typeof lackRow>[number];

function lacking(rows: readonly Lack[]): string {
  const words = rows.map(({ quantity, part }) => partWords(quantity, { ...part, description: '' }));
  const more = words.length > 3 ? ` and ${words.length - 3} more` : '';
  return `The shelf lacks ${words.slice(0, 3).join(', ')}${more}.`;
}

function outbid(rows: readonly Lack[], takers: readonly string[]): string {
  const words = rows.map(({ quantity, part }) => partWords(quantity, { ...part, description: '' }));
  const who = takers.length > 0 ? takers.slice(0, 4).join(', ') : 'other kits';
  return `The shelf would do for it alone, but what it needs (${words.slice(0, 3).join(', ')}) avoids more delay in ${who}.`;
}

/** Codes of chosen kits that take lots these lines could use. */
function takersOf({ question, answer, kits }: Found, byLine: ReadonlyMap<string, LineCover>) {
  const from = new Map(question.kits.flatMap(({ lines }) => lines.map((line) => [line.id, line.from])));
  const takers = new Map<string, Set<string>>();
  for (const { ask, lot } of answer.picks) {
    const code = kits.get(byLine.get(ask)?.row.kitId ?? '')?.kit.code;
    if (code) takers.set(lot, (takers.get(lot) ?? new Set()).add(code));
  }
  return (lacks: readonly { ask: string }[]) => [
    ...new Set(lacks.flatMap(({ ask }) => (from.get(ask) ?? []).flatMap((lot) => [...(takers.get(lot) ?? [])]))),
  ];
}

function proof({ chosen, optimal, value, bound }: FillKits): string {
  if (chosen.length === 0) return 'No open kit can be completed from what is free on the shelf.';
  if (optimal) return 'Best possible: no other choice of kits avoids more. This is proven.';
  const percent = bound > 0 ? Math.ceil(((bound - value) / bound) * 1000) / 10 : 0;
  return `Within ${percent} % of the best possible: the search ended before it was proven.`;
}

/** Kits to which everything is promised and not all is pulled. */
function promisedKits(state: CoverState): number {
  const open = new Map<string, boolean>();
  for (const { row, toPull } of state.all())
    if (toPull > 0) open.set(row.kitId, (open.get(row.kitId) ?? true) && row.reserved >= toPull);
  return [...open.values()].filter(Boolean).length;
}
