import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';

type Writing = Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId' | 'newId'> & {
  readonly input: {
    readonly how: string;
    readonly vendorPaper: string;
    readonly reason: string;
    readonly witnessId?: string;
  };
};

interface ToWrite {
  readonly orderId: string;
  readonly workOrderId: string;
  readonly lineId?: string;
  readonly lotId?: string;
  readonly quantity: number;
  /** Null for what came with the unit: it is the customer's of the work order. */
  readonly ownerId: string | null;
}

export interface Lost {
  readonly workOrderId: string;
  readonly quantity: number;
  readonly owner: { readonly id: string; readonly name: string };
}

/** Puts a loss on record beside the ledger: what, how, by which paper of the vendor, and whose it was. */
export async function writeLoss(context: Writing, { ownerId, ...loss }: ToWrite): Promise<Lost> {
  const { tx, now, actor, entryId, newId, input } = context;
  const { customer } = await tx.workOrder.findUniqueOrThrow({
    where: { id: loss.workOrderId },
    select: { customer: { select: { id: true, name: true } } },
  });
  const owner =
    ownerId === null || ownerId === customer.id
      ? customer
      : await tx.customer.findUniqueOrThrow({ where: { id: ownerId }, select: { id: true, name: true } });
  const { how, vendorPaper, reason, witnessId } = input;
  await tx.vendorLoss.create({
    data: {
      ...{ id: newId(), ...loss, how, vendorPaper, reason, ownerId: owner.id },
      ...{ personId: actor.personId, witnessId: witnessId ?? null, at: now, entryId },
    },
  });
  return { workOrderId: loss.workOrderId, quantity: loss.quantity, owner };
}
