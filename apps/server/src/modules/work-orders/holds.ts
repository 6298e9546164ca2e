import type { Operation } from '@hubwright/contracts/operation';
import type { Role } from '@hubwright/contracts/roles';
import type { HoldKind } from '@hubwright/contracts/work-orders/states';
import type { Context } from '../../platform/command/command.ts';

type Holding = Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'newId'>;

/** Stops a work order for a named reason; one version further. */
export async function writeHold(
  { tx, now, actor, newId }: Holding,
  workOrder: { readonly id: string },
  hold: { readonly kind: HoldKind; readonly reason: string; readonly liftedByRole: Role },
): Promise<{ holdId: string; version: number }> {
  const holdId = newId();
  await tx.hold.create({
    data: { ...hold, id: holdId, workOrderId: workOrder.id, placedBy: actor.personId, placedAt: now },
  });
  const { version } = await tx.workOrder.update({
    where: { id: workOrder.id },
    data: { version: { increment: 1 } },
    select: { version: true },
  });
  return { holdId, version };
}

/** Lifts the holds of one kind that an answer settles, such as the customer's after silence. */
export async function liftHolds(
  { tx, now, actor }: Holding,
  workOrder: { readonly id: string },
  settled: { readonly kind: HoldKind; readonly reason: string },
): Promise<number> {
  const { count } = await tx.hold.updateMany({
    where: { workOrderId: workOrder.id, kind: settled.kind, liftedAt: null },
    data: { liftedBy: actor.personId, liftedAt: now, liftReason: settled.reason },
  });
  return count;
}
