import type { Operation } from '@hubwright/contracts/operation';
import type { Context, Subject } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { kitsOf, reopenKits } from '../kits/public.ts';
import { advance } from './advance.ts';

/** Locks of work orders with their kits: a build that was closed may open again. */
export async function buildLocks(tx: Tx, workOrderIds: readonly string[]): Promise<string[]> {
  const kits = await Promise.all(workOrderIds.map((id) => kitsOf(tx, id)));
  return [...workOrderIds.map((id) => `work-order:${id}`), ...kits.flat()];
}

/** A build that was closed is one again, kits included; any other stays as it is. Call under `buildLocks`. */
export async function openClosedBuild(
  context: Pick<Context<Operation>, 'tx' | 'now'>,
  workOrderId: string,
): Promise<{ stage: string; kits: Subject[] }> {
  const workOrder = await context.tx.workOrder.findUniqueOrThrow({ where: { id: workOrderId } });
  if (workOrder.stage !== 'final-inspection') return { stage: workOrder.stage, kits: [] };
  const { stage } = await advance(context, workOrder, 'reopen-build');
  return { stage, kits: await reopenKits(context, workOrderId) };
}
