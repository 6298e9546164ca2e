import { fieldReviewOperations } from '@hubwright/contracts/field-balance/review-operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { requireAuthorisation } from '../people/public.ts';
import { balanceLock, stepOn, type WholeBalance, wholeBalance } from './field-balance.ts';
import { writeFieldSignature } from './field-signature.ts';
import { ownOf, standingOf } from './weights.ts';

const operation = fieldReviewOperations.decideFieldReview;
type Deciding = Context<typeof operation>;

/** Whoever may approve the balance weighs the analyser's error against its readings; reason and signature stay with the order. */
export const decideFieldReview = defineCommand(operation, {
  locks: (input) => [balanceLock(input)],
  async execute(context) {
    const { tx, input, actor, now, today } = context;
    const { balance, review } = await decidable(context);
    const need = { process: 'return-to-service', level: 'approve', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const { decision, reason } = input;
    const version = review.version + 1;
    await tx.fieldReview.update({
      where: { id: review.id },
      data: { decision, reason, decidedBy: actor.personId, decidedAt: now, version },
    });
    const { tag } = review.instrument;
    const content = { number: balance.number, instrument: tag, signature: review.fieldSignatureId, decision, reason };
    const meaning = operation.signs ?? '';
    await writeFieldSignature(context, { balance, kind: 'reviewed', meaning, content, authorisation });
    const { subject } = await stepOn(tx, balance, decision === 'measure-again' ? readAgain(balance) : {});
    return {
      reply: { id: review.id, version },
      subjects: [subject, { kind: 'instrument', id: review.instrumentId }],
      authorisation: { ...authorisation },
      facts: { review: review.id, number: balance.number, decision },
      reason,
    };
  },
});

/** A signed balance goes back to its runs, where a new sheet is signed. */
function readAgain(balance: WholeBalance) {
  if (balance.state !== 'balanced') return {};
  return { state: ownOf(standingOf(balance)).length > 0 ? 'weights-fitted' : 'runs' };
}

/** Readings to be taken again may still be decided otherwise, as long as they were not. */
async function decidable({ tx, input, expectedVersion }: Deciding) {
  const where = { id: input.fieldBalanceId };
  const balance = found(await tx.fieldBalance.findUnique({ where, include: wholeBalance }), 'This balance');
  const review = found(
    balance.reviews.find(({ id }) => id === input.reviewId),
    'This reading',
  );
  sameVersion(review.version, expectedVersion);
  if (review.decision !== null && review.decision !== 'measure-again')
    throw new Problem('review-decided', `It was decided: ${review.decision.replace('-', ' ')}`);
  const isReleased = balance.state === 'released';
  if (input.decision === 'measure-again' && isReleased)
    throw new Problem('unit-released', `${balance.number} was approved for return to service`);
  if (input.decision === 'customer-told' && !isReleased)
    throw new Problem('unit-not-released', `${balance.number} has not been released`);
  return { balance, review };
}
