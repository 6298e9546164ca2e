import type { Operation } from '@hubwright/contracts/operation';
import type { Context, Subject } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { type HeldAuthorisation, requireAuthorisation, writeSignOff } from '../people/public.ts';
import { advance } from './advance.ts';
import type { Comparison } from './compare-work.ts';
import { goOver } from './go-over.ts';
import { outdatedQuotes, type PlannedWorkOrder } from './plan-scope.ts';

/** What is signed when agreed work becomes other work. */
interface Replanned {
  /** Columns of the work order, written with the move. */
  readonly set: Parameters<Tx['workOrder']['update']>[0]['data'];
  readonly subject: string;
  readonly meaning: string;
  readonly result: string;
  readonly content: object;
}

/**
 * Makes other work of what was agreed: steps and kit follow, offers that no longer say what is asked for stand no more, the customer is
 * asked anew, and an inspector signs what changes.
 */
export async function replan(
  context: Context<Operation>,
  workOrder: PlannedWorkOrder,
  { plan, signed }: { plan: Comparison; signed: Replanned },
) {
  const { tx, actor, today } = context;
  const need = { process: 'final-inspection', level: 'inspect', today } as const;
  const authorisation: HeldAuthorisation = await requireAuthorisation(tx, actor, need);
  const moved = await advance(context, workOrder, { action: 'change-scope', set: signed.set });
  const kits = await goOver(context, workOrder.id, plan);
  const offers = outdatedQuotes(workOrder);
  await tx.quote.updateMany({
    where: { id: { in: offers.map(({ id }) => id) } },
    data: { state: 'superseded', version: { increment: 1 } },
  });
  await writeSignOff(context, {
    workOrderId: workOrder.id,
    subject: { kind: signed.subject, id: workOrder.id },
    ...{ meaning: signed.meaning, result: signed.result, content: signed.content },
    authorisation,
    revisionId: workOrder.revisionId,
  });
  const subjects: [Subject, ...Subject[]] = [
    { kind: 'work-order', id: workOrder.id, before: workOrder.version, after: moved.version },
    ...plan.travelers.map((one) => ({ kind: 'traveler', id: one.id, before: one.version, after: one.version + 1 })),
    ...kits,
    ...offers.map((one) => ({ kind: 'quote', id: one.id, before: one.version, after: one.version + 1 })),
  ];
  return { moved, authorisation, subjects };
}
