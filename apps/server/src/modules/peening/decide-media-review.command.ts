import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation, writeSignOff } from '../people/public.ts';
import { peenedAnew, peenedAnewLocks } from './come-again.ts';

const operation = mediaOperations.decideMediaReview;
type Deciding = Context<typeof operation>;
const nothingAgain: Awaited<ReturnType<typeof peenedAnew>> = { travelers: [], parts: 0, subjects: [] };
const numberOf = ({ number }: { readonly number: string }) => number;

/** An inspector weighs what the media check found against the strips of the lot; reason and signature stay with it. */
export const decideMediaReview = defineCommand(operation, {
  locks: async ({ reviewId }, tx) => {
    const review = await tx.peeningReview.findUnique({ where: { id: reviewId } });
    return review ? [`peening-lot:${review.lotId}`, ...(await peenedAnewLocks(tx, [review.workOrderId]))] : [];
  },
  async execute(context) {
    const { tx, input, actor, now, today } = context;
    const { review, workOrder, stepIds } = await decidable(context);
    const need = { process: 'shot-peening', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const { decision, reason } = input;
    const { lot, check } = review;
    const version = review.version + 1;
    const decided = { decision, reason, decidedBy: actor.personId, decidedAt: now, version };
    await tx.peeningReview.update({ where: { id: review.id }, data: decided });
    const because = { lot: lot.number, reason };
    const again = decision === 'peen-again' ? await peenedAnew(context, stepIds, because) : nothingAgain;
    const media = check.media.code;
    await writeSignOff(context, {
      workOrderId: workOrder.id,
      subject: { kind: 'media-review', id: review.id },
      ...{ meaning: operation.signs ?? '', result: 'pass', authorisation, revisionId: workOrder.revisionId },
      content: { workOrder: workOrder.number, lot: lot.number, media, found: check.reasons, decision, reason },
    });
    return {
      reply: { id: review.id, version },
      subjects: [
        { kind: 'work-order', id: workOrder.id },
        { kind: 'peening-lot', id: lot.id },
        ...again.subjects.filter(({ id }) => id !== workOrder.id),
      ],
      authorisation: { ...authorisation },
      facts: { review: review.id, lot: lot.number, media, decision, travelers: again.travelers.map(numberOf) },
      reason,
    };
  },
});

/** Throws `lot-decided`; `lot-unfinished` while the lot's own strips would decide; `unit-released`, `unit-not-released`. */
async function decidable({ tx, input, expectedVersion }: Deciding) {
  const review = found(
    await tx.peeningReview.findUnique({
      where: { id: input.reviewId },
      include: { lot: { include: { parts: true } }, check: { include: { media: true } } },
    }),
    'This lot',
  );
  sameVersion(review.version, expectedVersion);
  const { lot, decision } = review;
  if (decision !== null) throw new Problem('lot-decided', `${lot.number}: ${decision.replaceAll('-', ' ')}`);
  if (lot.state === 'redone' || lot.state === 'broken-up')
    throw new Problem('lot-decided', `${lot.number} was ${lot.state.replaceAll('-', ' ')}`);
  if (lot.state !== 'released') throw new Problem('lot-unfinished', `${lot.number} is ${lot.state}`);
  const workOrder = await tx.workOrder.findUniqueOrThrow({ where: { id: review.workOrderId } });
  if (input.decision === 'peen-again' && workOrder.releasedAt)
    throw new Problem('unit-released', `${workOrder.number} was approved for return to service`);
  if (input.decision === 'customer-told' && !workOrder.releasedAt)
    throw new Problem('unit-not-released', `${workOrder.number} has not been released`);
  const steps = await tx.travelerStep.findMany({
    where: { id: { in: lot.parts.map(({ stepId }) => stepId) }, traveler: { workOrderId: workOrder.id } },
    orderBy: { id: 'asc' },
    select: { id: true },
  });
  return { review, workOrder, stepIds: steps.map(({ id }) => id) };
}
