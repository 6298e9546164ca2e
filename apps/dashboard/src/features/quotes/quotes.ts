import type { Reply } from '@hubwright/contracts/operation';
import {
  type QuoteKind,
  type QuoteLineKind,
  type QuoteState,
  quoteOperations,
} from '@hubwright/contracts/quotes/operations';
import { addressOf } from '../../api/address.ts';
import { queryFor } from '../../api/query.ts';
import type { State } from '../../ui/StateMark.tsx';

export const quoteQuery = (quoteId: string) => queryFor(quoteOperations.quote, { quoteId });
export const quotesOf = (workOrderId: string) => queryFor(quoteOperations.listQuotes, { workOrderId, limit: 100 });
export const priceQuery = (workOrderId: string, kind: QuoteKind) =>
  queryFor(quoteOperations.priceWork, { workOrderId, kind });
export type QuoteRow = Reply<typeof quoteOperations.listQuotes>['rows'][number];
export type Quote = Reply<typeof quoteOperations.quote>;
export type QuoteLine = Quote['lines'][number];

export function documentAddress(quoteId: string): string {
  return addressOf(quoteOperations.quoteDocument, { quoteId });
}

export const kindWords: Record<QuoteKind, string> = {
  estimate: 'Estimate',
  firm: 'Firm quote',
  'over-and-above': 'Over and above',
};

/** The kinds in the middle of a sentence. */
export const theKind: Record<QuoteKind, string> = {
  estimate: 'the estimate',
  firm: 'the firm quote',
  'over-and-above': 'over-and-above',
};

export const lineWords: Record<QuoteLineKind, string> = {
  labour: 'Flat-rate labour',
  part: 'Kit',
  'finding-labour': 'Labour on a finding',
  'finding-part': 'Parts for a finding',
  'outside-service': 'Outside service',
  directive: 'Directive',
};

export const quoteMarks: Record<QuoteState, { state: State; word: string }> = {
  draft: { state: 'open', word: 'draft' },
  sent: { state: 'waiting', word: 'with the customer' },
  approved: { state: 'passed', word: 'approved' },
  declined: { state: 'stop', word: 'declined' },
  silent: { state: 'hold', word: 'no answer' },
  superseded: { state: 'note', word: 'superseded' },
};

/** A quote the customer can still answer. */
export function isOut(quote: { state: QuoteState }): boolean {
  return quote.state === 'sent' || quote.state === 'silent';
}
