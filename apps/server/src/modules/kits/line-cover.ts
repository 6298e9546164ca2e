import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { LineStanding } from '@hubwright/contracts/kits/operations';
import type { Cover } from '@hubwright/rules/shortage';
import { lastGoodDay } from './cover-question.ts';
import type { LineRow, StockRow, Supply } from './cover-rows.ts';
import type { Basis } from './cover-state.ts';
import { toPull } from './line-figures.ts';
import { likelyPercent } from './odds.ts';
import { buildDay, standInsOf } from './stand-ins.ts';

export interface LinePeg {
  readonly kind: 'lot' | 'order';
  readonly id: string;
  /** The order of an order line; null for a lot. */
  readonly orderId: string | null;
  readonly code: string;
  readonly part: string;
  readonly quantity: number;
  readonly date: string;
}

/** A kit line with what covers it. */
export interface LineCover {
  readonly row: LineRow;
  readonly toPull: number;
  readonly have: number;
  readonly onOrder: number;
  readonly late: number;
  readonly short: number;
  readonly pegs: LinePeg[];
  readonly coveredOn: string | 'never' | null;
  readonly orderBy: string | null;
  /** Percent where the work is not approved yet; null where it is firm. */
  readonly likely: number | null;
  readonly standing: LineStanding;
  readonly sentence: string;
}

/** The rule's answer brought back to kit lines, with words. */
export function lineCovers(
  lines: readonly LineRow[],
  answer: Cover,
  known: { supply: Supply; basis: Basis },
): LineCover[] {
  const { today } = known.basis;
  const byLine = new Map(answer.lines.map((line) => [line.demand, line]));
  const names = namesOf(known.supply);
  const words = { cause: causes(known.supply, known.basis), today };
  return lines.map((row) => {
    const covered = byLine.get(row.lineId);
    const pegs = (covered?.pegs ?? []).map(({ source, quantity, date }) => ({ ...names(source), quantity, date }));
    const onShelf = sum(pegs.filter(({ shelf }) => shelf));
    const late = sum(pegs.filter(({ shelf, date }) => !shelf && date > row.needBy));
    const figures = {
      row,
      toPull: toPull(row, row, row.tornDown),
      have: row.reserved + onShelf,
      onOrder: sum(pegs) - onShelf,
      late,
      short: covered?.short ?? 0,
      pegs: pegs.map(({ shelf: _, ...peg }) => peg),
      coveredOn: covered?.covered ?? null,
      orderBy: covered?.orderBy ?? null,
      likely: likelyPercent(row, known.basis),
    };
    return { ...figures, standing: standing(figures), sentence: sentence(figures, words) };
  });
}

type Figures = Omit<LineCover, 'standing' | 'sentence'>;

function standing({ row, toPull: pulling, have, onOrder, late, short }: Figures): LineStanding {
  if (pulling === 0) {
    if (row.quantity === 0 && row.inTray + row.installed === 0) return 'not-needed';
    if (row.installed >= row.quantity) return 'installed';
    return row.inTray > 0 ? 'in-tray' : 'not-needed';
  }
  if (short > 0) return 'short';
  if (late > 0) return 'late';
  if (onOrder > 0) return 'on-order';
  return row.reserved >= have ? 'reserved' : 'have';
}

/** Part, quantity, date, kit, cause: what a clerk reads and acts on. */
function sentence(figures: Figures, { cause, today }: { cause: (row: LineRow) => string; today: string }): string {
  const { row, short, late, pegs, orderBy } = figures;
  const where = `${row.kitCode} (${row.position || `line ${row.sequence}`})`;
  if (short > 0) {
    const until = orderBy ? ` Order by ${orderBy}${orderBy < today ? ', which has passed' : ''}.` : '';
    return `${partWords(short, row.part)} short for ${where}, needed ${row.needBy}: ${cause(row)}${again(row)}.${until}`;
  }
  if (late === 0) return '';
  const last = pegs.filter(({ date }) => date > row.needBy).at(-1);
  return `${partWords(late, row.part)} late for ${where}, needed ${row.needBy}: comes on ${last?.date} (${last?.code})${again(row)}.`;
}

/** Why a line that had its pieces asks for new ones, and who pays. */
function again({ shopPays }: LineRow): string {
  return shopPays > 0 ? '; asked for again because a function test failed, at the shop’s cost' : '';
}

/** Lines of one part, day and customer share their cause, and thousands of lines may be short of it. */
function causes(supply: Supply, { today, policy }: Basis): (row: LineRow) => string {
  const first = servedFirst(policy.order);
  const stock = byPart(supply.stock);
  const orders = byPart(supply.orders);
  const standIns = standInsOf(supply.alternates);
  const known = new Map<string, string>();
  return (row) => {
    const key = [row.part.id, row.needBy, row.customerId, isApproved(row)].join(' ');
    const found = known.get(key);
    if (found) return found;
    const uses = standIns.parts(row.part.id, buildDay(row.needBy, today));
    const here = uses.flatMap((partId) => stock.get(partId) ?? []);
    const coming = uses.some((partId) => orders.has(partId));
    const nothing = coming ? `what is on order serves ${first(row)}` : 'none on the shelf, none on order';
    const cause = here.length === 0 ? nothing : (unfit(here, row, today) ?? `what there is serves ${first(row)}`);
    known.set(key, cause);
    return cause;
  };
}

const isApproved = ({ consent, extra }: LineRow) => consent === 'approved' && (extra === null || extra === 'approved');

/** Whom the shop serves before a line, in words. */
function servedFirst(order: Basis['policy']['order']): (row: LineRow) => string {
  const kits = order === 'priority' ? 'kits of higher priority or needed earlier' : 'kits needed earlier';
  return (row) => (isApproved(row) ? kits : `${kits} or approved already`);
}

function byPart<T extends { partId: string }>(rows: readonly T[]): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const group = groups.get(row.partId);
    if (group) group.push(row);
    else groups.set(row.partId, [row]);
  }
  return groups;
}

/** The reason that keeps all of the stock from this line; undefined when some of it would do. */
function unfit(here: readonly StockRow[], row: LineRow, today: string): string | undefined {
  const reasons: [string, (lot: StockRow) => boolean][] = [
    ['waits for its certificate', (lot) => !lot.hasPaper],
    ['expires before the build', (lot) => lot.expiresOn !== null && lot.expiresOn < lastGoodDay(row, today)],
    ['is of a source the customer does not take', (lot) => !row.acceptedSources.includes(lot.sourceClass)],
    ['belongs to another customer', (lot) => lot.ownerId !== null && lot.ownerId !== row.customerId],
    ['is promised to other kits', (lot) => lot.free <= 0],
  ];
  const found = new Set<string>();
  for (const lot of here) {
    const reason = reasons.find(([, applies]) => applies(lot));
    if (!reason) return undefined;
    found.add(`${lot.code} ${reason[0]}`);
  }
  return [...found].slice(0, 4).join(', ');
}

function namesOf({ stock, orders }: Supply) {
  const known = new Map<string, Omit<LinePeg, 'quantity' | 'date'> & { shelf: boolean }>();
  for (const { id, code, partNumber, state } of stock)
    known.set(id, { kind: 'lot', id, orderId: null, code, part: partNumber, shelf: state === 'accepted' });
  for (const { id, orderId, code, partNumber } of orders)
    known.set(id, { kind: 'order', id, orderId, code, part: partNumber, shelf: false });
  return (id: string) =>
    known.get(id) ?? { kind: 'order' as const, id, orderId: null, code: '', part: '', shelf: false };
}

function sum(pegs: readonly { quantity: number }[]): number {
  return pegs.reduce((total, { quantity }) => total + quantity, 0);
}
