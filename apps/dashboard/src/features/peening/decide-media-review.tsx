import { type mediaDecisions, mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { DecideThenSign } from '../../ui/DecideThenSign.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { MediaReview } from './peening.ts';

type Decision = (typeof mediaDecisions)[number];
const decisionWords: Record<Decision, string> = {
  stands: 'the peening stands',
  'peen-again': 'the parts are peened again',
  'customer-told': 'the customer was told',
};

/** What a failed media check means for the parts of one unit, decided and signed by an inspector with the reason. */
export function DecideMediaReview(props: { review: MediaReview; signer: Signer; onClose: () => void }) {
  const { review, onClose } = props;
  const possible: readonly Decision[] = ['stands', review.workOrder.releasedAt ? 'customer-told' : 'peen-again'];
  const shown = (
    <p>
      {review.lot.number}, {review.workOrder.number}: {review.parts.map(({ position }) => position).join(', ')}. Media{' '}
      {review.media.code} failed its check: {review.reasons.join(' ')}
    </p>
  );
  return (
    <DecideThenSign
      title="What does the failed check mean for these parts?"
      hint="What was found, against the strips of the lot"
      choices={possible.map((value) => ({ value, text: decisionWords[value] }))}
      onClose={onClose}
      signing={(answer, back) => (
        <SignCommand
          op={mediaOperations.decideMediaReview}
          input={{ reviewId: review.id, ...answer }}
          version={review.version}
          signer={props.signer}
          onClose={back}
          onWrongInput={back}
          onSigned={() => {
            say(`Decided on ${review.lot.number}: ${decisionWords[answer.decision]}.`);
            onClose();
          }}
        >
          {shown}
          <p>
            {decisionWords[answer.decision]}: {answer.reason}
          </p>
        </SignCommand>
      )}
    >
      {shown}
    </DecideThenSign>
  );
}
