import { isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';
import { KnownIds } from './known-ids.ts';

/** A century: anything longer is a typing mistake. */
const LONGEST_LEAD_DAYS = 36_525;

export type Demand = {
  id: string;
  part: string;
  quantity: number;
  needBy: string;
  priority?: number | undefined;
  minimumExpiry?: string | undefined;
  /** Likely, not firm: served after every firm demand, whatever its date. */
  expected?: boolean | undefined;
  /** Only foreseen, for units that are not here or not looked into: served after all that is firm or likely. */
  foreseen?: boolean | undefined;
};
/** Which demand is served first: by the day it is needed, then by priority; or the other way round. */
export type ServingOrder = 'need-date' | 'priority';
export type Lot = { id: string; part: string; quantity: number; expires?: string | undefined };
export type Order = { id: string; part: string; quantity: number; date: string; expires?: string | undefined };
export type Alternate = { part: string; use: string };

export type CoverInput = {
  asOf: string;
  /** Need date first unless told otherwise. */
  order?: ServingOrder | undefined;
  demands: Demand[];
  onHand: Lot[];
  incoming: Order[];
  alternates?: Alternate[] | undefined;
  leadTimeDays?: Record<string, number> | undefined;
};

/** Dates as ordered whole numbers, each distinct date checked once: 800,000 lines name a few thousand days. */
export class DayNumbers {
  private readonly known = new Map<string, number>();
  private lastDate = '';
  private lastDay = 0;

  /** `place` may hold a [] for the row: spelling out the path of every good date would cost more than the rule. */
  of(date: string, place: string, row?: number): number {
    if (date === this.lastDate) return this.lastDay;
    let day = this.known.get(date);
    if (day === undefined) {
      const path = place.replace('[]', `[${row}]`);
      if (!isDate(date)) throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', path);
      day = Number(date.slice(0, 4) + date.slice(5, 7) + date.slice(8, 10));
      this.known.set(date, day);
    }
    this.lastDate = date;
    this.lastDay = day;
    return day;
  }
}

type Row = { id: string; part: string; quantity: number };

function checkRows(rows: Row[], list: string, known: KnownIds): void {
  for (let i = 0; i < rows.length; i += 1) {
    const wrong = faultOf(rows[i]!, known);
    if (wrong !== undefined) throw new RuleError(wrong.code, wrong.message, `${list}[${i}].${wrong.field}`);
  }
}

const named = (name: string) => typeof name === 'string' && name !== '';

function faultOf(
  { id, part, quantity }: Row,
  known: KnownIds,
): { code: string; field: string; message: string } | undefined {
  if (!named(id)) return { code: 'missing-name', field: 'id', message: 'An id is a text that is not empty.' };
  if (!known.add(id)) return { code: 'duplicate-id', field: 'id', message: `The id ${id} is used twice.` };
  if (!named(part)) return { code: 'missing-name', field: 'part', message: 'A part is a text that is not empty.' };
  if (Number.isSafeInteger(quantity) && quantity >= 0) return undefined;
  return { code: 'not-a-quantity', field: 'quantity', message: 'A quantity is whole issue units, 0 or more.' };
}

/** Everything but dates and priorities, which are checked as they are turned into columns. */
export function checkCoverInput(input: CoverInput): void {
  checkRows(input.demands, 'demands', new KnownIds(input.demands.length));
  // Lots and orders share one set: pegs and free quantities name their source by id alone.
  const sources = new KnownIds(input.onHand.length + input.incoming.length);
  checkRows(input.onHand, 'onHand', sources);
  checkRows(input.incoming, 'incoming', sources);
  for (const [i, { part, use }] of (input.alternates ?? []).entries()) {
    const path = `alternates[${i}].use`;
    if (!part || !use) throw new RuleError('missing-name', 'An alternate names a part and what may stand in.', path);
    if (part === use) throw new RuleError('alternate-of-itself', `${part} cannot stand in for itself.`, path);
  }
  for (const [part, days] of Object.entries(input.leadTimeDays ?? {})) {
    if (Number.isSafeInteger(days) && days >= 0 && days <= LONGEST_LEAD_DAYS) continue;
    const rule = `A lead time is whole days, 0 to ${LONGEST_LEAD_DAYS}.`;
    throw new RuleError('not-a-lead-time', rule, `leadTimeDays.${part}`);
  }
}
