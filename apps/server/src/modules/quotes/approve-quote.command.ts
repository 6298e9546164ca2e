import { Problem } from '@hubwright/contracts/problems';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { addDays } from '@hubwright/rules/dates';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { advance, liftHolds } from '../work-orders/public.ts';
import { answeredOn, type OpenQuote, readQuote, refuseExpired, refuseNotOut, workOrderLock } from './open-quote.ts';

type Approving = Context<typeof quoteOperations.approveQuote>;

/** A named person's yes, up to an amount, at a time. It opens the door to charged work, vendor and blade orders. */
export const approveQuote = defineCommand(quoteOperations.approveQuote, {
  locks: (input, tx) => workOrderLock(tx, input.quoteId),
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const quote = await readQuote(tx, input.quoteId, expectedVersion);
    refuseNotOut(quote);
    const on = await answeredOn(context, quote, input.decidedAt);
    refuseExpired(quote, on);
    await refuseAmount(context, quote);
    const moved = await moveOn(context, quote, on);
    await liftHolds(context, quote.workOrder, { kind: 'silence', reason: `${quote.number} was approved` });
    const version = quote.version + 1;
    const { decidedByName, note, amount } = input;
    await tx.quote.update({
      where: { id: quote.id },
      data: {
        ...{ state: 'approved', decision: 'approved', decidedByName, decisionNote: note, version },
        decidedAt: new Date(input.decidedAt),
        decidedAmountMinor: amount.minor,
        ...(quote.kind === 'estimate' ? { capMinor: amount.minor } : {}),
      },
    });
    return {
      reply: { id: quote.id, version },
      subjects: [
        { kind: 'work-order', id: quote.workOrderId, before: quote.workOrder.version, after: moved.version },
        { kind: 'quote', id: quote.id, before: quote.version, after: version },
      ],
      facts: { number: quote.number, fileHash: quote.fileHash, totalMinor: quote.totalMinor, amount },
    };
  },
});

async function moveOn(context: Approving, quote: OpenQuote, on: string): Promise<{ version: number }> {
  const { workOrder } = quote;
  if (quote.kind === 'estimate')
    return advance(context, workOrder, {
      action: 'approve-evaluation',
      set: { evaluationCapMinor: context.input.amount.minor },
    });
  if (quote.kind === 'firm') {
    const promised = quote.promiseDays !== null && workOrder.promisedOn === null;
    return advance(context, workOrder, {
      action: 'approve-quote',
      set: promised ? { promisedOn: toDbDate(addDays(on, quote.promiseDays ?? 0)) } : {},
    });
  }
  const version = workOrder.version + 1;
  await context.tx.workOrder.update({ where: { id: workOrder.id }, data: { version } });
  return { version };
}

/** An evaluation has a cap: enough for the evaluation fee, no more than was estimated. Other offers are taken whole. */
async function refuseAmount({ tx, input }: Approving, quote: OpenQuote): Promise<void> {
  const { amount } = input;
  const wrong = (detail: string) =>
    new Problem('amount-wrong', detail, { totalMinor: quote.totalMinor, currency: quote.currency }, [
      { pointer: '/amount', detail },
    ]);
  if (amount.currency !== quote.currency) throw wrong(`${quote.number} is in ${quote.currency}`);
  if (quote.kind !== 'estimate') {
    if (amount.minor < quote.totalMinor)
      throw wrong('Less than the total is not a yes to this quote: write a new revision');
    return;
  }
  const shop = found(await tx.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  if (amount.minor < shop.evaluationFeeMinor) throw wrong('The cap does not cover the evaluation fee');
  if (amount.minor > quote.totalMinor) throw wrong('The cap is more than was estimated');
}
