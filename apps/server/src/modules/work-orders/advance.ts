import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import {
  type Action,
  type Consent,
  consentTable,
  consentTitles,
  isPossible,
  next,
  type Stage,
  stageTable,
  stageTitles,
} from '@hubwright/contracts/work-orders/states';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';

/** What advancing needs to know of a work order. */
export interface AdvancedWorkOrder {
  readonly id: string;
  readonly number: string;
  readonly stage: string;
  readonly consent: string;
  readonly version: number;
}

/** An action, with the columns it sets in the same write. */
interface Advance {
  readonly action: Action;
  readonly set: Parameters<Tx['workOrder']['update']>[0]['data'];
}

/**
 * The only way stage and consent move: by their state tables. An action both tables know moves both, or is refused with
 * `wrong-state`. Open holds refuse with `work-held` unless the action is one that a hold does not stop. Answers the work
 * order as it is now, one version further.
 */
export async function advance(
  context: Pick<Context<Operation>, 'tx' | 'now'>,
  workOrder: AdvancedWorkOrder,
  move: Action | Advance,
): Promise<{ id: string; stage: Stage; consent: Consent; version: number }> {
  const { tx, now } = context;
  const { action, set } = typeof move === 'string' ? { action: move, set: {} } : move;
  const from = { stage: workOrder.stage as Stage, consent: workOrder.consent as Consent };
  if (!isPossible(from, action)) throw wrongState(workOrder, action);
  if (!passesHolds.has(action)) await refuseHeld(tx, workOrder);
  const stage = next(stageTable, from.stage, action)?.to ?? from.stage;
  const consent = next(consentTable, from.consent, action)?.to ?? from.consent;
  const data = {
    ...set,
    stage,
    consent,
    ...(stage === from.stage ? {} : { stageSince: now }),
    ...(consent === from.consent ? {} : { consentSince: now }),
    ...(stage === 'closed' ? { closedAt: now } : {}),
    version: { increment: 1 },
  };
  const { version } = await tx.workOrder.update({ where: { id: workOrder.id }, data, select: { version: true } });
  return { id: workOrder.id, stage, consent, version };
}

// Words with the customer go on while the work is held.
const passesHolds = new Set<Action>([
  'send-estimate',
  'send-quote',
  'record-silence',
  'approve-evaluation',
  'approve-quote',
  'decline-return',
  'decline-purchase',
  'decline-scrap',
  'return-unrepaired',
]);

/** Throws `work-held` while any hold is open, naming each and who lifts it. */
export async function refuseHeld(tx: Tx, workOrder: { id: string; number: string }): Promise<void> {
  const holds = await tx.hold.findMany({
    where: { workOrderId: workOrder.id, liftedAt: null },
    select: { id: true, kind: true, reason: true, liftedByRole: true },
    orderBy: { placedAt: 'asc' },
    take: 20,
  });
  const [first] = holds;
  if (!first) return;
  throw new Problem('work-held', `${workOrder.number} is held: ${first.reason} (lifted by ${first.liftedByRole})`, {
    holds,
  });
}

function wrongState(workOrder: AdvancedWorkOrder, action: Action): Problem {
  const stage = stageTitles[workOrder.stage as Stage] ?? workOrder.stage;
  const consent = consentTitles[workOrder.consent as Consent] ?? workOrder.consent;
  return new Problem(
    'wrong-state',
    `${workOrder.number} is at “${stage}” and “${consent}”: this is not possible there`,
    {
      action,
      stage: workOrder.stage,
      consent: workOrder.consent,
    },
  );
}
