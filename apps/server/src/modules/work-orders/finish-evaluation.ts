import type { Operation } from '@hubwright/contracts/operation';
import type { Stage } from '@hubwright/contracts/work-orders/states';
import type { Context } from '../../platform/command/command.ts';
import { advance } from './advance.ts';

/**
 * When the last evaluation step of a unit in teardown is signed and every finding decided, the evaluation is complete and the
 * firm quote is due. Answers the new stage, or undefined when it is not so yet.
 */
export async function finishEvaluation(
  context: Pick<Context<Operation>, 'tx' | 'now'>,
  workOrderId: string,
): Promise<Stage | undefined> {
  const { tx } = context;
  const workOrder = await tx.workOrder.findUniqueOrThrow({ where: { id: workOrderId } });
  if (workOrder.stage !== 'teardown' || workOrder.consent !== 'evaluation-approved') return undefined;
  const open = await tx.travelerStep.count({
    where: { traveler: { workOrderId }, state: 'open', phase: 'evaluation' },
  });
  const undecided = await tx.finding.count({ where: { workOrderId, disposition: null } });
  if (open > 0 || undecided > 0) return undefined;
  return (await advance(context, workOrder, 'declare-inspected')).stage;
}
