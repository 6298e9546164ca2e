import { addDays } from '../dates/index.ts';
import { CompetingParts } from './competing-parts.ts';
import { type CoverInput, checkCoverInput, DayNumbers } from './cover-input.ts';
import { columnsOf, type DemandColumns, servingOrder } from './demand-columns.ts';
import { NEVER_EXPIRES, PartSupply, type Peg, type Supply, type Want } from './part-supply.ts';

export type CoverLine = {
  demand: string;
  pegs: Peg[];
  short: number;
  /** Day on which all of it is there; 'never' when something is short. */
  covered: string | 'never';
  /** Not whole by needBy, because supply is late or because there is none. */
  late: boolean;
  /** For the short quantity, where the part's lead time is known. May lie before asOf: then it is already too late. */
  orderBy?: string;
};
export type Cover = { lines: CoverLine[]; free: { source: string; quantity: number }[] };

/**
 * Which supply covers which demand, and what is short, late or free.
 *
 * Demands are served by needBy, then priority (1 before 2, none last), then id; with `order: 'priority'` by priority, then needBy.
 * What is only expected comes after all that is firm, what is only foreseen after both. Each takes its own part before alternates
 * (in the order listed, not transitive), on hand before incoming, earliest expiry first; alternates that are there in time
 * come before the own part late. Late supply is taken in order of arrival. An order whose day has passed counts as arriving
 * on asOf, and so does the use of a demand whose needBy has passed. A lot is used on the need date (or on arrival when
 * that is later) and must not be expired then; `minimumExpiry` is the least `expires` the demand accepts.
 *
 * Quantities: whole numbers of the smallest issue unit. Lines come back in the order of `demands`.
 * Source: gross-to-net netting with pegging as in material requirements planning (Heizer & Render, Operations Management,
 * MRP chapter); the serving order is common practice, no source.
 *
 * @throws RuleError not-a-date, not-a-quantity, not-a-priority, not-a-lead-time, missing-name, duplicate-id,
 *   alternate-of-itself
 * @example Two seals on hand, one arriving on 10 March, four needed by the 5th:
 *   pegs 2 (on hand) and 1 (10 March, late), short 1, covered 'never'.
 */
export function cover(input: CoverInput): Cover {
  checkCoverInput(input);
  const days = new DayNumbers();
  const asOf = days.of(input.asOf, 'asOf');
  const parts = new CompetingParts(input.alternates ?? []);
  const columns = columnsOf(input, parts, days);
  const supplies = suppliesOf(input, days, asOf);
  const shelvesFor = shelvesByDemandPart(supplies, parts);
  const served = serve(servingOrder(input, parts, columns), { columns, asOf, shelvesFor });
  const free = [...supplies.lots, ...supplies.orders].filter(({ left }) => left > 0);
  return { lines: linesOf(input, served), free: free.map(({ id, left }) => ({ source: id, quantity: left })) };
}

/** What each demand got, by its index. */
type Served = { short: Float64Array; pegs: (Peg[] | undefined)[]; last: (Supply | undefined)[] };
type Shop = { columns: DemandColumns; asOf: number; shelvesFor: (part: number) => PartSupply[] };

function serve(order: Int32Array, { columns, asOf, shelvesFor }: Shop): Served {
  const short = columns.quantity;
  const pegs = new Array<Peg[] | undefined>(order.length);
  const last = new Array<Supply | undefined>(order.length);
  const want: Want = { quantity: 0, horizon: 0, minimumExpiry: 0, pegs: undefined, last: undefined };
  for (const index of order) {
    want.quantity = short[index]!;
    want.horizon = Math.max(asOf, columns.needBy[index]!);
    want.minimumExpiry = columns.minimumExpiry[index]!;
    want.pegs = undefined;
    want.last = undefined;
    const shelves = shelvesFor(columns.part[index]!);
    for (let i = 0; i < shelves.length && want.quantity > 0; i += 1) shelves[i]!.takeOnTime(want);
    for (let i = 0; i < shelves.length && want.quantity > 0; i += 1) shelves[i]!.takeLate(want);
    short[index] = want.quantity;
    pegs[index] = want.pegs;
    last[index] = want.last;
  }
  return { short, pegs, last };
}

function linesOf({ asOf, demands, leadTimeDays }: CoverInput, served: Served): CoverLine[] {
  const orderBy = orderByFrom(leadTimeDays ?? {});
  return demands.map(({ id, part, quantity, needBy }, index) => {
    const short = served.short[index]!;
    const whole = served.last[index]?.date ?? asOf;
    const line: CoverLine = {
      demand: id,
      pegs: served.pegs[index] ?? [],
      short,
      covered: short > 0 ? 'never' : whole,
      late: quantity > 0 && (short > 0 || whole > needBy),
    };
    const day = short > 0 ? orderBy(part, needBy) : undefined;
    if (day !== undefined) line.orderBy = day;
    return line;
  });
}

type Supplies = { lots: Supply[]; orders: Supply[] };

function suppliesOf(input: CoverInput, days: DayNumbers, asOf: number): Supplies {
  const expiryOf = (expires: string | undefined, place: string, row: number) =>
    expires === undefined ? NEVER_EXPIRES : days.of(expires, place, row);
  const lots = input.onHand.map(({ id, part, quantity, expires }, i) => ({
    id,
    part,
    date: input.asOf,
    available: asOf,
    expiry: expiryOf(expires, 'onHand[].expires', i),
    left: quantity,
  }));
  const orders = input.incoming.map(({ id, part, quantity, date, expires }, i) => {
    const arrival = days.of(date, 'incoming[].date', i);
    return {
      id,
      part,
      date: arrival < asOf ? input.asOf : date,
      available: Math.max(arrival, asOf),
      expiry: expiryOf(expires, 'incoming[].expires', i),
      left: quantity,
    };
  });
  return { lots, orders };
}

/** The supply a demand for a part may draw on, in order; worked out once per part. */
function shelvesByDemandPart({ lots, orders }: Supplies, parts: CompetingParts): (part: number) => PartSupply[] {
  const stock = byPart(lots, parts);
  const onOrder = byPart(orders, parts);
  const shelves = new Map<number, PartSupply>();
  for (const part of new Set([...stock.keys(), ...onOrder.keys()])) {
    shelves.set(part, new PartSupply(stock.get(part) ?? [], onOrder.get(part) ?? []));
  }
  const known: PartSupply[][] = [];
  return (part) => {
    known[part] ??= parts.servedFrom(part).flatMap((source) => shelves.get(source) ?? []);
    return known[part];
  };
}

function byPart(supplies: Supply[], parts: CompetingParts): Map<number, Supply[]> {
  const lists = new Map<number, Supply[]>();
  for (const supply of supplies) {
    const part = parts.number(supply.part);
    const list = lists.get(part);
    if (list === undefined) lists.set(part, [supply]);
    else list.push(supply);
  }
  return lists;
}

/** Lines of a kit share their need date and parts their lead time, so few different subtractions are ever made. */
function orderByFrom(leadTimeDays: Record<string, number>): (part: string, needBy: string) => string | undefined {
  const leadTimes = new Map(Object.entries(leadTimeDays));
  const known: Map<string, string>[] = [];
  return (part, needBy) => {
    const lead = leadTimes.get(part);
    if (lead === undefined) return undefined;
    known[lead] ??= new Map();
    const days = known[lead];
    const before = days.get(needBy);
    if (before !== undefined) return before;
    const day = addDays(needBy, -lead);
    days.set(needBy, day);
    return day;
  };
}
