import { Problem } from '@hubwright/contracts/problems';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { advance, writeHold } from '../work-orders/public.ts';
import { type OpenQuote, readQuote, workOrderLock } from './open-quote.ts';

/** Nobody answered in spite of every reminder: the work order is held until the customer speaks. */
export const recordSilence = defineCommand(quoteOperations.recordSilence, {
  locks: (input, tx) => workOrderLock(tx, input.quoteId),
  async execute(context) {
    const { tx, input, today, expectedVersion } = context;
    const quote = await readQuote(tx, input.quoteId, expectedVersion);
    if (quote.state !== 'sent')
      throw new Problem('quote-not-open', `${quote.number} is ${quote.state}`, { state: quote.state });
    refuseEarly(quote, today);
    if (quote.kind !== 'over-and-above') await advance(context, quote.workOrder, 'record-silence');
    const hold = await writeHold(context, quote.workOrder, {
      kind: 'silence',
      reason: `No answer to ${quote.number}`,
      liftedByRole: 'front-desk',
    });
    const version = quote.version + 1;
    await tx.quote.update({ where: { id: quote.id }, data: { state: 'silent', version } });
    return {
      reply: { id: quote.id, version, holdId: hold.holdId },
      subjects: [
        { kind: 'work-order', id: quote.workOrderId, before: quote.workOrder.version, after: hold.version },
        { kind: 'quote', id: quote.id, before: quote.version, after: version },
      ],
      facts: { number: quote.number, holdId: hold.holdId },
    };
  },
});

function refuseEarly(quote: OpenQuote, today: string): void {
  const open = quote.chasers.find((chaser) => chaser.sentAt === null);
  if (open)
    throw new Problem('answer-not-overdue', `The chaser of ${fromDbDate(open.dueOn)} was not sent yet`, {
      chaserId: open.id,
    });
  const last = quote.chasers.at(-1);
  if (last && fromDbDate(last.dueOn) > today)
    throw new Problem('answer-not-overdue', `The last chaser is dated ${fromDbDate(last.dueOn)}`, {
      dueOn: fromDbDate(last.dueOn),
    });
}
