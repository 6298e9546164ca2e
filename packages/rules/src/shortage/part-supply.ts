import { FirstFit } from './first-fit.ts';

/** Day numbers are the date's digits, 2026-03-01 → 20260301: they order as the dates do and need no calendar. */
export const NEVER_EXPIRES = 2147483647;

export type Supply = {
  id: string;
  part: string;
  /** The day it can be used from: as-of for stock, arrival for orders. */
  date: string;
  available: number;
  /** First day it may not be used. */
  expiry: number;
  left: number;
};

export type Peg = { source: string; part: string; quantity: number; date: string };

/** What one demand still wants, from whichever part's supply is asked next, and what it got. */
export type Want = {
  quantity: number;
  horizon: number;
  minimumExpiry: number;
  pegs: Peg[] | undefined;
  /** The peg that comes last decides when the line is whole. */
  last: Supply | undefined;
};

const byExpiry = (a: Supply, b: Supply) =>
  a.expiry - b.expiry || a.available - b.available || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
const byArrival = (a: Supply, b: Supply) => a.available - b.available || byExpiry(a, b);

/** The lots and orders of one part. Cheap for demands whose horizon moves on; each move back looks at its orders anew. */
export class PartSupply {
  private readonly stock: Supply[];
  private readonly orders: Supply[];
  private readonly arrivals: Supply[];
  private readonly stockOpen: FirstFit;
  private readonly ordersOnTime: FirstFit;
  private readonly ordersLate: FirstFit;
  private readonly placeOf = new Map<Supply, number>();
  private arrived = 0;
  private horizon = 0;

  constructor(stock: Supply[], orders: Supply[]) {
    this.stock = stock.sort(byExpiry);
    this.orders = orders.sort(byExpiry);
    this.arrivals = [...orders].sort(byArrival);
    this.stockOpen = new FirstFit(stock.length);
    this.ordersOnTime = new FirstFit(orders.length);
    this.ordersLate = new FirstFit(orders.length);
    this.stock.forEach((lot, place) => {
      if (lot.left > 0) this.stockOpen.set(place, lot.expiry);
    });
    this.orders.forEach((order, place) => {
      this.placeOf.set(order, place);
    });
    this.openLate();
  }

  takeOnTime(want: Want): void {
    this.arriveUntil(want.horizon);
    const expiry = Math.max(want.horizon + 1, want.minimumExpiry);
    take(this.stock, this.stockOpen, { want, from: 0, expiry });
    take(this.orders, this.ordersOnTime, { want, from: 0, expiry });
  }

  takeLate(want: Want): void {
    this.arriveUntil(want.horizon);
    take(this.arrivals, this.ordersLate, { want, from: this.arrived, expiry: want.minimumExpiry });
  }

  private openLate(): void {
    this.arrivals.forEach((order, place) => {
      // What has expired on the day it arrives is of no use to anyone, late or not.
      this.ordersLate.set(place, order.left > 0 && order.expiry > order.available ? order.expiry : 0);
    });
  }

  /** The next demand is needed earlier, as where priority is served before date: what arrives after it is late again. */
  private moveBack(): void {
    this.arrived = 0;
    this.orders.forEach((_, place) => {
      this.ordersOnTime.set(place, 0);
    });
    this.openLate();
  }

  private arriveUntil(horizon: number): void {
    if (horizon < this.horizon) this.moveBack();
    this.horizon = horizon;
    for (; this.arrived < this.arrivals.length; this.arrived += 1) {
      const order = this.arrivals[this.arrived]!;
      if (order.available > horizon) return;
      if (order.left > 0) this.ordersOnTime.set(this.placeOf.get(order)!, order.expiry);
    }
  }
}

function take(supplies: Supply[], open: FirstFit, ask: { want: Want; from: number; expiry: number }): void {
  const { want } = ask;
  let from = ask.from;
  while (want.quantity > 0) {
    const place = open.find(from, Math.max(ask.expiry, 1));
    if (place < 0) return;
    const supply = supplies[place]!;
    const quantity = Math.min(supply.left, want.quantity);
    supply.left -= quantity;
    want.quantity -= quantity;
    if (supply.left === 0) open.set(place, 0);
    if (want.last === undefined || supply.available > want.last.available) want.last = supply;
    const peg = { source: supply.id, part: supply.part, quantity, date: supply.date };
    // Most lines need one peg: pushing to an empty array would reserve room for seventeen, 800,000 times.
    if (want.pegs === undefined) want.pegs = [peg];
    else want.pegs.push(peg);
    from = place;
  }
}
