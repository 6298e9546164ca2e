import { Problem } from '@hubwright/contracts/problems';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { requireCurrentRevision } from '../manuals/public.ts';
import { refuseHeld } from './advance.ts';
import { stepLocks, stepToSign } from './step-signing.ts';
import { writeStepSignature } from './write-step-signature.ts';

/** A wrong sign-off is never edited: a new one names it and says why. Both stay and both are shown. */
export const correctSignOff = defineCommand(travelerOperations.correctSignOff, {
  async locks(input, tx) {
    const signOff = await tx.signOff.findUnique({ where: { id: input.signOffId }, select: { stepId: true } });
    return signOff?.stepId ? stepLocks(tx, signOff.stepId, input.equipmentId) : [];
  },
  async execute(context) {
    const { tx, input } = context;
    const wrong = await signOffToCorrect(tx, input.signOffId);
    const step = await stepToSign(tx, wrong.stepId);
    const { traveler } = step;
    refuseAfterRelease(traveler.workOrder);
    if (traveler.disposition === 'reject')
      throw new Problem('traveler-rejected', `${traveler.number}: the part was rejected`);
    await refuseHeld(tx, traveler.workOrder);
    await requireCurrentRevision(tx, traveler.revisionId);
    const written = await writeStepSignature(context, step, {
      entry: input,
      signature: { result: 'pass', meaning: `Corrects an earlier sign-off: ${input.reason}`, supersedesId: wrong.id },
    });
    return {
      reply: {
        id: step.id,
        version: written.travelerVersion,
        signOffId: written.signOffId,
        state: 'signed' as const,
        travelerId: traveler.id,
        stage: written.stage,
      },
      subjects: [
        { kind: 'traveler', id: traveler.id, before: traveler.version, after: written.travelerVersion },
        { kind: 'work-order', id: traveler.workOrderId },
      ],
      authorisation: written.authorisation,
      facts: { traveler: traveler.number, step: step.title, supersedes: wrong.id, signOff: written.signOffId },
      reason: input.reason,
    };
  },
});

async function signOffToCorrect(tx: Tx, id: string): Promise<{ id: string; stepId: string }> {
  const signOff = found(await tx.signOff.findUnique({ where: { id } }), 'This sign-off');
  // A supervisor's is corrected with the trainee's, beside which it stands.
  if (signOff.countersignsId !== null) return signOffToCorrect(tx, signOff.countersignsId);
  const { stepId } = signOff;
  if (stepId === null) throw new Problem('not-found', 'This is no sign-off of a step');
  const newer = await tx.signOff.findUnique({ where: { supersedesId: id }, select: { id: true } });
  if (newer) throw new Problem('already-corrected', 'A newer sign-off took its place', { signOffId: newer.id });
  return { id, stepId };
}

/** After the release the record stands; what is found later is a new record. */
function refuseAfterRelease(workOrder: { number: string; releasedAt: Date | null }): void {
  if (workOrder.releasedAt)
    throw new Problem('wrong-state', `${workOrder.number} has been released; its record stands as it was signed`);
}
