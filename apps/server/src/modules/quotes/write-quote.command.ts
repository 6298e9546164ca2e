import { Problem } from '@hubwright/contracts/problems';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { type Consent, isPossible, type Stage } from '@hubwright/contracts/work-orders/states';
import { addDays } from '@hubwright/rules/dates';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';
import { priceLines, totalsOf } from './price.ts';
import type { PricedLine } from './priced-line.ts';

type Writing = Context<typeof quoteOperations.writeQuote>;

const letters = { estimate: 'E', firm: 'Q', 'over-and-above': 'A' } as const;

/** A quote at today's cost. What is already with the customer stays valid until this one is sent. */
export const writeQuote = defineCommand(quoteOperations.writeQuote, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, today } = context;
    const workOrder = found(await tx.workOrder.findUnique({ where: { id: input.workOrderId } }), 'This work order');
    refuseWrongState(workOrder, input.kind);
    const { lines: computed, gaps } = await priceLines(tx, { ...input, today });
    const [gap] = gaps;
    if (gap) throw new Problem(gap.problem, gap.detail, { missing: gaps.map(({ detail }) => detail) });
    const lines = [...computed, ...input.outsideServices.map(outsideService)];
    const written = await insert(context, workOrder.number, lines);
    const version = workOrder.version + 1;
    await tx.workOrder.update({ where: { id: workOrder.id }, data: { version } });
    return {
      reply: { version: 1, ...written },
      subjects: [
        { kind: 'work-order', id: workOrder.id, before: workOrder.version, after: version },
        { kind: 'quote', id: written.id, after: 1 },
      ],
      facts: { ...written, lines },
    };
  },
});

function refuseWrongState(
  workOrder: { number: string; stage: string; consent: string },
  kind: Writing['input']['kind'],
): void {
  const state = { stage: workOrder.stage as Stage, consent: workOrder.consent as Consent };
  const possible =
    kind === 'over-and-above'
      ? state.consent === 'approved' && ['in-work', 'build', 'final-inspection'].includes(state.stage)
      : isPossible(state, kind === 'estimate' ? 'send-estimate' : 'send-quote');
  if (!possible)
    throw new Problem('wrong-state', `${workOrder.number} is not where its ${kind} quote is written`, { ...state });
}

function outsideService(service: Writing['input']['outsideServices'][number]): PricedLine {
  return {
    ...{ kind: 'outside-service', partId: null, findingId: null, quantity: 1, unitPrice: '' },
    ...service,
  };
}

async function insert(context: Writing, workOrderNumber: string, lines: readonly PricedLine[]) {
  const { tx, input, now, today, newId } = context;
  const { workOrderId, kind } = input;
  const shop = found(await tx.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  const totals = totalsOf(lines, shop);
  const before = await tx.quote.findFirst({ where: { workOrderId, kind }, orderBy: { revision: 'desc' } });
  const revision = (before?.revision ?? 0) + 1;
  // A draft nobody has seen is replaced at once.
  await tx.quote.updateMany({
    where: { workOrderId, kind, state: 'draft' },
    data: { state: 'superseded', version: { increment: 1 } },
  });
  const id = newId();
  const number = `${workOrderNumber}-${letters[kind]}${revision}`;
  await tx.quote.create({
    data: {
      ...{ id, workOrderId, number, kind, revision, state: 'draft', currency: shop.currency },
      ...totals,
      taxPercent: shop.taxPercent,
      validUntil: toDbDate(addDays(today, shop.quoteValidDays)),
      promiseDays: input.promiseDays ?? null,
      supersedesId: supersedes(before, kind),
      createdAt: now,
    },
  });
  await tx.quoteLine.createMany({
    data: lines.map((line, index) => ({ ...line, id: newId(), quoteId: id, sequence: index + 1 })),
  });
  return { id, number, revision, totalMinor: totals.totalMinor, currency: shop.currency };
}

/** A decided quote is not superseded; each over-and-above stands for itself unless it replaces an undecided one. */
function supersedes(before: { id: string; state: string } | null, kind: string): string | null {
  if (!before || before.state === 'approved' || before.state === 'declined') return null;
  return kind === 'over-and-above' && before.state !== 'draft' ? null : before.id;
}
