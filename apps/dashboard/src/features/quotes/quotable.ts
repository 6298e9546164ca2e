import type { QuoteKind } from '@hubwright/contracts/quotes/operations';
import type { Action, Stage } from '@hubwright/contracts/work-orders/states';

interface Order {
  readonly stage: Stage;
  readonly consent: string;
  readonly possible: readonly Action[];
  readonly findings: readonly { overAndAbove: boolean }[];
  readonly quotes: readonly { kind: QuoteKind; state: string }[];
}

/** Stages in which something found later can still be offered. */
const laterStages: readonly Stage[] = ['in-work', 'build', 'final-inspection'];

/** The kinds that can be written now. One that is written and not yet sent is sent first. */
export function quotable(order: Order): QuoteKind[] {
  const kinds: QuoteKind[] = [];
  if (order.possible.includes('send-estimate')) kinds.push('estimate');
  if (order.possible.includes('send-quote')) kinds.push('firm');
  // A directive may have been issued meanwhile; what there is to quote the priced sheet says.
  if (order.consent === 'approved' && laterStages.includes(order.stage)) kinds.push('over-and-above');
  return kinds;
}

/** Whether a kind is the answer the desk owes now, and not a new revision of one that is out or drafted. */
export function isOwed(order: Order, kind: QuoteKind): boolean {
  if (order.quotes.some((quote) => quote.kind === kind && quote.state === 'draft')) return false;
  if (kind === 'estimate') return order.consent === 'estimate-due';
  if (kind === 'firm') return order.consent === 'quote-due';
  const hasLater = order.findings.some((finding) => finding.overAndAbove);
  return hasLater && !order.quotes.some((quote) => quote.kind === kind && quote.state === 'sent');
}
