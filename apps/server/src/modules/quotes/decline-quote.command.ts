import { Problem } from '@hubwright/contracts/problems';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { freePromises } from '../kits/public.ts';
import { advance, liftHolds } from '../work-orders/public.ts';
import { answeredOn, type OpenQuote, readQuote, refuseNotOut, workOrderLock } from './open-quote.ts';

type Declining = Context<typeof quoteOperations.declineQuote>;

/** "No" is a path: back in pieces tagged unserviceable, bought by the shop, or scrapped; after evaluation its fee is due. */
export const declineQuote = defineCommand(quoteOperations.declineQuote, {
  locks: (input, tx) => workOrderLock(tx, input.quoteId),
  async execute(context) {
    const { tx, input, expectedVersion } = context;
    const quote = await readQuote(tx, input.quoteId, expectedVersion);
    refuseNotOut(quote);
    await answeredOn(context, quote, input.decidedAt);
    refusePath(context, quote);
    const fee = await evaluationFee(context, quote);
    const moved = await moveOn(context, quote);
    await liftHolds(context, quote.workOrder, { kind: 'silence', reason: `${quote.number} was declined` });
    const freed = input.path ? await freePromises(context, quote.workOrderId) : [];
    const version = quote.version + 1;
    await tx.quote.update({
      where: { id: quote.id },
      data: {
        ...{ state: 'declined', decision: input.path ?? 'declined', version },
        ...{ decidedByName: input.decidedByName, decisionNote: input.note, decidedAmountMinor: fee },
        decidedAt: new Date(input.decidedAt),
      },
    });
    return {
      reply: { id: quote.id, version, evaluationFeeMinor: fee },
      subjects: [
        { kind: 'work-order', id: quote.workOrderId, before: quote.workOrder.version, after: moved.version },
        { kind: 'quote', id: quote.id, before: quote.version, after: version },
        ...freed,
      ],
      facts: { number: quote.number, evaluationFeeMinor: fee, purchasePrice: input.purchasePrice ?? null },
    };
  },
});

function refusePath({ input }: Declining, quote: OpenQuote): void {
  const wrong = (pointer: string, detail: string) =>
    new Problem('answer-path-missing', detail, {}, [{ pointer, detail }]);
  if (quote.kind === 'over-and-above') {
    if (input.path) throw wrong('/path', 'Work that was approved goes on; only the extra work is declined');
    return;
  }
  if (!input.path) throw wrong('/path', 'Say whether the unit is returned, bought or scrapped');
  if ((input.path === 'purchase') !== (input.purchasePrice !== undefined))
    throw wrong('/purchasePrice', 'A price belongs to a purchase, and a purchase has one');
  if (input.purchasePrice && (input.purchasePrice.currency !== quote.currency || input.purchasePrice.minor < 0))
    throw wrong('/purchasePrice', `Pay in ${quote.currency}, not less than nothing`);
}

/** Due once the unit was evaluated, and never more than the cap the customer approved. */
async function evaluationFee({ tx, input }: Declining, quote: OpenQuote): Promise<number> {
  if (quote.kind !== 'firm' || input.waiveFee) return 0;
  const shop = found(await tx.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  return Math.min(shop.evaluationFeeMinor, quote.workOrder.evaluationCapMinor ?? shop.evaluationFeeMinor);
}

async function moveOn(context: Declining, quote: OpenQuote): Promise<{ version: number }> {
  const { path } = context.input;
  if (path) return advance(context, quote.workOrder, `decline-${path}`);
  const version = quote.workOrder.version + 1;
  await context.tx.workOrder.update({ where: { id: quote.workOrderId }, data: { version } });
  return { version };
}
