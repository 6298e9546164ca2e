import { Problem } from '@hubwright/contracts/problems';
import { reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';

const operation = reviewOperations.decideCalibrationReview;

/** An inspector weighs the instrument's error against the reading; the reason and the signature stay with it. */
export const decideReview = defineCommand(operation, {
  locks: async (input, tx) => {
    const review = await tx.calibrationReview.findUnique({
      where: { id: input.reviewId },
      select: { workOrderId: true },
    });
    return review ? [`work-order:${review.workOrderId}`] : [];
  },
  async execute(context) {
    const { tx, input, actor, now, today } = context;
    const { review, workOrder, instrument } = await decidable(context);
    const need = { process: 'dimensional-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const { decision, reason } = input;
    const version = review.version + 1;
    await tx.calibrationReview.update({
      where: { id: review.id },
      data: { decision, reason, decidedBy: actor.personId, decidedAt: now, version },
    });
    await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'calibration-review', id: review.id },
      meaning: operation.signs ?? '',
      result: 'pass',
      authorisation,
      revisionId: workOrder.revisionId,
      content: { workOrder: workOrder.number, instrument: instrument.tag, signOff: review.signOffId, decision, reason },
    });
    return {
      reply: { id: review.id, version },
      subjects: [
        { kind: 'work-order', id: workOrder.id },
        { kind: 'instrument', id: instrument.id },
      ],
      authorisation: { ...authorisation },
      facts: { review: review.id, signOff: review.signOffId, decision },
      reason,
    };
  },
});

/** A reading to be measured again may still be decided otherwise, as long as it was not. */
async function decidable({ tx, input, expectedVersion }: Context<typeof operation>) {
  const review = found(await tx.calibrationReview.findUnique({ where: { id: input.reviewId } }), 'This reading');
  sameVersion(review.version, expectedVersion);
  if (review.decision !== null && review.decision !== 'measure-again')
    throw new Problem('review-decided', `It was decided: ${review.decision.replace('-', ' ')}`);
  const workOrder = await tx.workOrder.findUniqueOrThrow({ where: { id: review.workOrderId } });
  if (input.decision === 'measure-again' && workOrder.releasedAt)
    throw new Problem('unit-released', `${workOrder.number} was approved for return to service`);
  if (input.decision === 'customer-told' && !workOrder.releasedAt)
    throw new Problem('unit-not-released', `${workOrder.number} has not been released`);
  const instrument = await tx.instrument.findUniqueOrThrow({ where: { id: review.instrumentId } });
  return { review, workOrder, instrument };
}
