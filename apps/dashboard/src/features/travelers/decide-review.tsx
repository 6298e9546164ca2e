import { type reviewDecisions, reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { DecideThenSign } from '../../ui/DecideThenSign.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { decisionWords, type Review, valueWords } from './ReviewTable.tsx';

type Decision = (typeof reviewDecisions)[number];

const here: readonly Decision[] = ['stands', 'measure-again'];
const gone: readonly Decision[] = ['stands', 'customer-told'];

/** What a doubtful reading means, decided and signed by an inspector with the reason. */
export function DecideReview({ review, signer, onClose }: { review: Review; signer: Signer; onClose: () => void }) {
  const possible = review.workOrder.releasedAt ? gone : here;
  const shown = (
    <>
      <p>
        {review.workOrder.number}, {review.traveler?.position} {review.what}: {valueWords(review) || 'no value'}
      </p>
      <p>
        Measured with {review.instrument.tag}, found out of tolerance on {review.foundOn}.
      </p>
    </>
  );
  return (
    <DecideThenSign
      title="What does this reading mean now?"
      hint="The error found against the distance to the limits"
      choices={possible.map((value) => ({ value, text: decisionWords[value] }))}
      onClose={onClose}
      signing={(answer, back) => (
        <SignCommand
          op={reviewOperations.decideCalibrationReview}
          input={{ reviewId: review.id, ...answer }}
          version={review.version}
          signer={signer}
          onClose={back}
          onWrongInput={back}
          onSigned={() => {
            say(`Decided: ${decisionWords[answer.decision]}.`);
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
