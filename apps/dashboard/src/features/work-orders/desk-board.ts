import type { Reply } from '@hubwright/contracts/operation';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { queryFor } from '../../api/query.ts';
import { formatMoney } from '../../format/money.ts';
import { countOf } from '../../format/numbers.ts';
import { unitWords } from './order-words.ts';

export const deskBoardQuery = queryFor(workOrderOperations.deskBoard, {});
export type DeskBoard = Reply<typeof workOrderOperations.deskBoard>;
type DeskUnit = DeskBoard['toWrite'][number];
type DeskQuote = DeskBoard['quotesOut'][number];

export const deskFilters = ['ours', 'theirs'] as const;
/** `ours`: the shop owes the answer. `theirs`: the customer does. */
export type DeskFilter = (typeof deskFilters)[number];

/** One answer that is owed, as a sentence that begins with who waits. */
export interface Owed {
  readonly key: string;
  readonly workOrderId: string;
  readonly number: string;
  readonly who: string;
  /** The rest of the sentence, without the full stop. */
  readonly wants: string;
  /** An instant; the oldest stands first. */
  readonly since: string;
  readonly days: number;
  readonly isLate: boolean;
}

const written: Record<DeskUnit['kind'], string> = {
  estimate: 'waits for the estimate for',
  firm: 'waits for the quote after inspection of',
  'over-and-above': 'has not heard what more was found on',
};

function fromUnit(unit: Omit<DeskUnit, 'kind'>, kind: string, wants: string): Owed {
  return {
    key: `${kind} ${unit.workOrder.id}`,
    workOrderId: unit.workOrder.id,
    number: unit.workOrder.number,
    who: unit.customer,
    wants,
    since: unit.since,
    days: unit.days,
    isLate: false,
  };
}

function fromQuote(quote: DeskQuote, wants: string, isLate: boolean): Owed {
  return {
    key: `quote ${quote.id}`,
    workOrderId: quote.workOrder.id,
    number: quote.workOrder.number,
    who: quote.customer,
    wants,
    since: quote.sentAt,
    days: quote.days,
    isLate,
  };
}

function lateBy(daysLeft: number): string {
  if (daysLeft < 0) return `${-daysLeft} ${daysLeft === -1 ? 'day' : 'days'} late`;
  return daysLeft === 0 ? 'promised for today' : `promised in ${countOf(daysLeft, 'day')}`;
}

const oldestFirst = (a: Owed, b: Owed) => a.since.localeCompare(b.since) || a.number.localeCompare(b.number);
const amountOf = (quote: DeskQuote) => formatMoney({ currency: quote.currency, minor: quote.totalMinor });

/** What the shop owes: something to write, a customer to remind, a promise that may break. Oldest first. */
export function weOwe(board: DeskBoard): Owed[] {
  return [
    ...board.toWrite.map((unit) => fromUnit(unit, unit.kind, `${written[unit.kind]} ${unitWords(unit.unit)}`)),
    ...board.overdueAnswers.map((quote) =>
      fromQuote(quote, `has not answered ${quote.number} over ${amountOf(quote)}: remind them`, true),
    ),
    ...board.promisesAtRisk.map((unit) => ({
      ...fromUnit(
        unit,
        'promise',
        `wants ${unitWords(unit.unit)}: ${lateBy(unit.daysLeft)}, now ${unit.note.toLowerCase()}`,
      ),
      isLate: unit.daysLeft < 0,
    })),
  ].sort(oldestFirst);
}

/** Offers that lie with a customer. Oldest first. */
export function theyOwe(board: DeskBoard): Owed[] {
  return [...board.quotesOut, ...board.overAndAboveWaiting]
    .map((quote) =>
      fromQuote(
        quote,
        `has ${quote.kind === 'estimate' ? 'the estimate' : quote.kind === 'firm' ? 'the quote' : 'over-and-above'} ${quote.number} over ${amountOf(quote)}`,
        quote.nextChaser?.overdue ?? false,
      ),
    )
    .sort(oldestFirst);
}
