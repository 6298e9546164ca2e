import type { Scope } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { releaseOperations } from '@hubwright/contracts/releases/operations';
import { dateIn } from '../../platform/command/clock.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import { requireAuthorisation } from '../people/public.ts';
import { openItems } from './open-items.ts';
import { refuseOwnWork } from './own-work.ts';
import { type ReleaseFacts, releaseFacts } from './release-facts.ts';
import { factsShown, wordOfWork } from './word-of-work.ts';

const caution =
  'The release is the act of the authorised person, under the shop’s certificate and the local authority. This list only prepares it.';

/** What is open before return to service, for whoever asks. Nothing is written on this way, so the read-only models serve. */
export async function checklistFor(
  models: Reads['models'],
  asked: { workOrderId: string; personId: string; today: string },
): Promise<Reply<typeof releaseOperations.releaseChecklist>> {
  const tx = models as unknown as Tx;
  const facts = await releaseFacts(tx, asked.workOrderId);
  const open = await openItems(tx, facts, asked.today);
  const { workOrder } = facts;
  const { word, basis } = wordOfWork(facts);
  return {
    workOrder: {
      id: workOrder.id,
      number: workOrder.number,
      scope: workOrder.scope as Scope,
      stage: workOrder.stage,
      version: workOrder.version,
    },
    ready: open.length === 0 && !workOrder.releasedAt,
    open,
    word,
    wordBasis: basis,
    facts: factsShown(facts).map(({ fact, steps }) => ({
      fact,
      steps: steps.map((step) => ({
        stepId: step.id,
        traveler: step.traveler.number,
        title: step.title,
        by: step.signOff?.person ?? '',
        on: dateIn(facts.shop.zone, step.signOff?.performedAt ?? step.signedAt ?? new Date(0)),
      })),
    })),
    notYou: await whyNot(tx, facts, asked),
    caution,
  };
}

async function whyNot(
  tx: Tx,
  facts: ReleaseFacts,
  { personId, today }: { personId: string; today: string },
): Promise<string | null> {
  try {
    await requireAuthorisation(tx, { personId, roles: [] }, { process: 'return-to-service', level: 'approve', today });
    refuseOwnWork(facts, personId);
    return null;
  } catch (error) {
    if (error instanceof Problem) return error.detail;
    throw error;
  }
}
