import { isDate } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** A century: anything longer is a typing mistake. */
const LONGEST_LEAD_DAYS = 36_525;

export type Demand = {
  id: string;
  part: string;
  quantity: number;
  needBy: string;
  priority?: number | undefined;
  minimumExpiry?: string | undefined;
};
export type Lot = { id: string; part: string; quantity: number; expires?: string | undefined };
export type Order = { id: string; part: string; quantity: number; date: string; expires?: string | undefined };
export type Alternate = { part: string; use: string };

export type CoverInput = {
  asOf: string;
  demands: Demand[];
  onHand: Lot[];
  incoming: Order[];
  alternates?: Alternate[] | undefined;
  leadTimeDays?: Record<string, number> | undefined;
};

/** Dates as ordered whole numbers, each distinct date checked once: 800,000 lines name a few thousand days. */
export class DayNumbers {
  private readonly known = new Map<string, number>();

  of(date: string, path: () => string): number {
    const known = this.known.get(date);
    if (known !== undefined) return known;
    if (!isDate(date)) throw new RuleError('not-a-date', 'A date must be a real day written YYYY-MM-DD.', path());
    const day = Number(date.slice(0, 4) + date.slice(5, 7) + date.slice(8, 10));
    this.known.set(date, day);
    return day;
  }
}

function checkQuantity(quantity: number, path: () => string): void {
  if (Number.isSafeInteger(quantity) && quantity >= 0) return;
  throw new RuleError('not-a-quantity', 'A quantity is a whole number of the smallest issue unit, 0 or more.', path());
}

function checkName(value: string, path: () => string): void {
  if (typeof value === 'string' && value !== '') return;
  throw new RuleError('missing-name', 'An id or part must be a text that is not empty.', path());
}

function checkRows(rows: { id: string; part: string; quantity: number }[], list: string, seen: Set<string>): void {
  rows.forEach((row, i) => {
    checkName(row.id, () => `${list}[${i}].id`);
    checkName(row.part, () => `${list}[${i}].part`);
    checkQuantity(row.quantity, () => `${list}[${i}].quantity`);
    if (seen.has(row.id)) throw new RuleError('duplicate-id', `The id ${row.id} is used twice.`, `${list}[${i}].id`);
    seen.add(row.id);
  });
}

/** Everything but the dates, which are checked as they are turned into day numbers. */
export function checkCoverInput(input: CoverInput): void {
  checkRows(input.demands, 'demands', new Set());
  // Lots and orders share one set: pegs and free quantities name their source by id alone.
  const sources = new Set<string>();
  checkRows(input.onHand, 'onHand', sources);
  checkRows(input.incoming, 'incoming', sources);
  input.demands.forEach(({ priority }, i) => {
    if (priority === undefined || Number.isFinite(priority)) return;
    throw new RuleError('not-a-priority', 'A priority is a number; 1 is served before 2.', `demands[${i}].priority`);
  });
  input.alternates?.forEach(({ part, use }, i) => {
    checkName(part, () => `alternates[${i}].part`);
    checkName(use, () => `alternates[${i}].use`);
    if (part !== use) return;
    throw new RuleError('alternate-of-itself', `${part} cannot stand in for itself.`, `alternates[${i}].use`);
  });
  for (const [part, days] of Object.entries(input.leadTimeDays ?? {})) {
    if (Number.isSafeInteger(days) && days >= 0 && days <= LONGEST_LEAD_DAYS) continue;
    throw new RuleError(
      'not-a-lead-time',
      `A lead time is whole days, 0 to ${LONGEST_LEAD_DAYS}.`,
      `leadTimeDays.${part}`,
    );
  }
}
