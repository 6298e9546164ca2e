import { addDays } from '../dates/index.ts';
import { type CoverInput, checkCoverInput, DayNumbers } from './cover-input.ts';
import { NEVER_EXPIRES, PartSupply, type Peg, type Supply, type Want } from './part-supply.ts';
import { servingOrder } from './serving-order.ts';

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
 * Demands are served by needBy, then priority (1 before 2, none last), then id. Each takes its own part before alternates
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
  const asOf = days.of(input.asOf, () => 'asOf');
  const lots = lotsOf(input, days, asOf);
  const orders = ordersOf(input, days, asOf);
  const shelves = shelvesOf(lots, orders);
  const alternates = listsBy(input.alternates ?? [], ({ part }) => part);
  const partsFor = (part: string) => [part, ...(alternates.get(part) ?? []).map(({ use }) => use)];
  const orderBy = orderByFrom(input, days);
  const lines = new Array<CoverLine>(input.demands.length);
  for (const index of servingOrder(input, days)) {
    const demand = input.demands[index]!;
    const want: Want = {
      quantity: demand.quantity,
      horizon: Math.max(
        asOf,
        days.of(demand.needBy, () => `demands[${index}].needBy`),
      ),
      minimumExpiry:
        demand.minimumExpiry === undefined ? 0 : days.of(demand.minimumExpiry, () => `demands[${index}].minimumExpiry`),
      pegs: [],
    };
    const parts = partsFor(demand.part);
    for (const part of parts) if (want.quantity > 0) shelves.get(part)?.takeOnTime(want);
    for (const part of parts) if (want.quantity > 0) shelves.get(part)?.takeLate(want);
    lines[index] = lineOf(input, index, { want, orderBy });
  }
  const free = [...lots, ...orders].filter(({ left }) => left > 0);
  return { lines, free: free.map(({ id, left }) => ({ source: id, quantity: left })) };
}

function lotsOf(input: CoverInput, days: DayNumbers, asOf: number): Supply[] {
  return input.onHand.map(({ id, part, quantity, expires }, i) => ({
    id,
    part,
    date: input.asOf,
    available: asOf,
    expiry: expires === undefined ? NEVER_EXPIRES : days.of(expires, () => `onHand[${i}].expires`),
    left: quantity,
  }));
}

function ordersOf(input: CoverInput, days: DayNumbers, asOf: number): Supply[] {
  return input.incoming.map(({ id, part, quantity, date, expires }, i) => {
    const arrival = days.of(date, () => `incoming[${i}].date`);
    return {
      id,
      part,
      date: arrival < asOf ? input.asOf : date,
      available: Math.max(arrival, asOf),
      expiry: expires === undefined ? NEVER_EXPIRES : days.of(expires, () => `incoming[${i}].expires`),
      left: quantity,
    };
  });
}

function shelvesOf(lots: Supply[], orders: Supply[]): Map<string, PartSupply> {
  const stock = listsBy(lots, ({ part }) => part);
  const onOrder = listsBy(orders, ({ part }) => part);
  const parts = new Set([...stock.keys(), ...onOrder.keys()]);
  return new Map([...parts].map((part) => [part, new PartSupply(stock.get(part) ?? [], onOrder.get(part) ?? [])]));
}

function listsBy<T>(items: T[], keyOf: (item: T) => string): Map<string, T[]> {
  const lists = new Map<string, T[]>();
  for (const item of items) {
    const list = lists.get(keyOf(item));
    if (list === undefined) lists.set(keyOf(item), [item]);
    else list.push(item);
  }
  return lists;
}

function lineOf(
  input: CoverInput,
  index: number,
  { want, orderBy }: { want: Want; orderBy: (part: string, needBy: string) => string | undefined },
): CoverLine {
  const { id, part, quantity, needBy } = input.demands[index]!;
  const short = want.quantity;
  const whole = want.pegs.reduce((latest, peg) => (peg.date > latest ? peg.date : latest), input.asOf);
  const line: CoverLine = {
    demand: id,
    pegs: want.pegs,
    short,
    covered: short > 0 ? 'never' : whole,
    late: quantity > 0 && (short > 0 || whole > needBy),
  };
  const day = short > 0 ? orderBy(part, needBy) : undefined;
  if (day !== undefined) line.orderBy = day;
  return line;
}

function orderByFrom(input: CoverInput, days: DayNumbers): (part: string, needBy: string) => string | undefined {
  const leadTimes = new Map(Object.entries(input.leadTimeDays ?? {}));
  const known = new Map<number, string>();
  return (part, needBy) => {
    const lead = leadTimes.get(part);
    if (lead === undefined) return undefined;
    const key = days.of(needBy, () => 'demands') * 1e6 + lead;
    const found = known.get(key);
    if (found !== undefined) return found;
    const day = addDays(needBy, -lead);
    known.set(key, day);
    return day;
  };
}
