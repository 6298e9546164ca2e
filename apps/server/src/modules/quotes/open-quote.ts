import { Problem } from '@hubwright/contracts/problems';
import { dateIn } from '../../platform/command/clock.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';

/** The work order's lock: whoever answers, writes or sends a quote decides on the whole work order. */
export async function workOrderLock(tx: Tx, quoteId: string): Promise<string[]> {
  const quote = await tx.quote.findUnique({ where: { id: quoteId }, select: { workOrderId: true } });
  return [`work-order:${quote?.workOrderId ?? quoteId}`];
}

/** The quote a command acts on, with its work order, at the version the caller saw. */
export async function readQuote(tx: Tx, quoteId: string, expectedVersion: number | undefined) {
  const quote = found(
    await tx.quote.findUnique({
      where: { id: quoteId },
      include: { workOrder: { include: { customer: true } }, chasers: { orderBy: { dueOn: 'asc' } } },
    }),
    'This quote',
  );
  sameVersion(quote.version, expectedVersion);
  return quote;
}
export type OpenQuote = Awaited<ReturnType<typeof readQuote>>;

/** Throws `quote-not-open` unless the quote is with the customer. */
export function refuseNotOut(quote: OpenQuote): void {
  if (quote.state === 'sent' || quote.state === 'silent') return;
  throw new Problem('quote-not-open', `${quote.number} is ${quote.state}`, { state: quote.state });
}

/** An answer comes after the offer and not in the future. Answers its calendar date in the shop. */
export async function answeredOn(context: { tx: Tx; now: Date }, quote: OpenQuote, decidedAt: string): Promise<string> {
  const at = new Date(decidedAt);
  // People write times to the minute.
  const sentMinute = Math.floor((quote.sentAt?.getTime() ?? 0) / 60_000) * 60_000;
  if (at > context.now || at.getTime() < sentMinute) {
    const detail = at > context.now ? 'An answer cannot lie in the future' : 'The answer is older than the offer';
    throw new Problem('answer-time-wrong', detail, {}, [{ pointer: '/decidedAt', detail }]);
  }
  const shop = found(await context.tx.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  return dateIn(shop.zone, at);
}

/** `validUntil` is the last day on which the customer may say yes. */
export function refuseExpired(quote: OpenQuote, on: string): void {
  const validUntil = fromDbDate(quote.validUntil);
  if (on > validUntil)
    throw new Problem('quote-expired', `${quote.number} was valid until ${validUntil}`, { validUntil });
}
