import { Problem } from '@hubwright/contracts/problems';
import { type Stage, stageTitles } from '@hubwright/contracts/work-orders/states';
import type { Tx } from '../../platform/database/client.ts';
import { isAgreed, workStages } from './step-block.ts';

/** Throws why nothing is done to pieces of a unit now, where no step of a traveler says it: the same reasons, in the same order. */
export async function requireWorkOn(tx: Tx, workOrderId: string): Promise<void> {
  const { number, stage, consent, holds, revision } = await tx.workOrder.findUniqueOrThrow({
    where: { id: workOrderId },
    include: { holds: { where: { liftedAt: null } }, revision: { select: { state: true } } },
  });
  const facts = { workOrder: number };
  if (!workStages.has(stage as Stage)) {
    const where = stageTitles[stage as Stage] ?? stage;
    throw new Problem('wrong-state', `${number} is at “${where}”: no work is done on it there`, facts);
  }
  if (holds.length > 0)
    throw new Problem('work-held', `${number} is held: ${holds.map(({ reason }) => reason).join('; ')}`, facts);
  if (revision.state !== 'current')
    throw new Problem(
      'revision-superseded',
      `The revision ${number} goes by is superseded: an inspector takes it over`,
    );
  if (!isAgreed('repair', consent))
    throw new Problem('consent-missing', `${number}: the customer has not approved the firm quote`, facts);
}
