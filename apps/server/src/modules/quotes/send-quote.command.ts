import { Problem } from '@hubwright/contracts/problems';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { addDays } from '@hubwright/rules/dates';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import type { FileStore } from '../../platform/files/store.ts';
import { advance } from '../work-orders/public.ts';
import { type OpenQuote, readQuote, refuseExpired, workOrderLock } from './open-quote.ts';
import { printQuote } from './print-quote.ts';

type Sending = Context<typeof quoteOperations.sendQuote>;

/** Days after sending on which the customer is reminded; after the last one, silence is recorded. Common practice, no source. */
export const chaserDays = [2, 5, 10] as const;

/** The PDF the customer gets is archived as it is; later changes are another revision. */
export const sendQuote = (files: FileStore) =>
  defineCommand(quoteOperations.sendQuote, {
    locks: (input, tx) => workOrderLock(tx, input.quoteId),
    async execute(context) {
      const { tx, input, now, today, expectedVersion } = context;
      const quote = await readQuote(tx, input.quoteId, expectedVersion);
      if (quote.state !== 'draft')
        throw new Problem('quote-not-open', `${quote.number} is ${quote.state}`, { state: quote.state });
      refuseExpired(quote, today);
      const moved = await moveOn(context, quote);
      await supersedeEarlier(context, quote);
      const bytes = await printQuote(tx, quote.id, { sentAt: now, sentOn: today });
      const fileHash = await files.put(context, {
        bytes,
        mediaType: 'application/pdf',
        title: `Quote ${quote.number}`,
      });
      const chasers = chaserDays.map((days) => addDays(today, days));
      await tx.chaser.createMany({
        data: chasers.map((dueOn) => ({ id: context.newId(), quoteId: quote.id, dueOn: toDbDate(dueOn) })),
      });
      const version = quote.version + 1;
      await tx.quote.update({ where: { id: quote.id }, data: { state: 'sent', sentAt: now, fileHash, version } });
      return {
        reply: { id: quote.id, version, fileHash, chasers },
        subjects: [
          { kind: 'work-order', id: quote.workOrderId, before: quote.workOrder.version, after: moved.version },
          { kind: 'quote', id: quote.id, before: quote.version, after: version },
        ],
        facts: { number: quote.number, totalMinor: quote.totalMinor, fileHash, chasers },
      };
    },
  });

async function moveOn(context: Sending, quote: OpenQuote): Promise<{ version: number }> {
  if (quote.kind === 'estimate') return advance(context, quote.workOrder, 'send-estimate');
  if (quote.kind === 'firm') return advance(context, quote.workOrder, 'send-quote');
  const version = quote.workOrder.version + 1;
  await context.tx.workOrder.update({ where: { id: quote.workOrderId }, data: { version } });
  return { version };
}

/** What this one replaces at the customer: every open revision of its kind, or every open over-and-above for one of its findings. */
async function supersedeEarlier({ tx }: Sending, quote: OpenQuote): Promise<void> {
  const own = await tx.quoteLine.findMany({ where: { quoteId: quote.id, findingId: { not: null } } });
  const findingIds = own.flatMap((line) => (line.findingId ? [line.findingId] : []));
  await tx.quote.updateMany({
    where: {
      workOrderId: quote.workOrderId,
      kind: quote.kind,
      state: { in: ['sent', 'silent'] },
      id: { not: quote.id },
      ...(quote.kind === 'over-and-above' ? { lines: { some: { findingId: { in: findingIds } } } } : {}),
    },
    data: { state: 'superseded', version: { increment: 1 } },
  });
}
