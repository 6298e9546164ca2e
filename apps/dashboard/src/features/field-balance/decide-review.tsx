import { fieldReviewOperations } from '@hubwright/contracts/field-balance/review-operations';
import { DecideThenSign } from '../../ui/DecideThenSign.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { type FieldReview, readingWords, reviewWords } from './ReviewTable.tsx';

const here = ['stands', 'measure-again'] as const;
const gone = ['stands', 'customer-told'] as const;

/** What doubtful readings of a balance mean, decided and signed with the reason. */
export function DecideFieldReview(props: { review: FieldReview; signer: Signer; onClose: () => void }) {
  const { review, signer, onClose } = props;
  const possible = review.fieldBalance.state === 'released' ? gone : here;
  const shown = (
    <>
      <p>
        {review.fieldBalance.number}, {review.propeller.designation} {review.propeller.serial} on {review.aircraft}:{' '}
        {readingWords(review)}
      </p>
      <p>
        Read with {review.instrument.tag}, found out of tolerance on {review.foundOn}.
      </p>
    </>
  );
  return (
    <DecideThenSign
      title="What do these readings mean now?"
      hint="The error found against the distance to the limits"
      choices={possible.map((value) => ({ value, text: reviewWords[value] }))}
      onClose={onClose}
      signing={(answer, back) => (
        <SignCommand
          op={fieldReviewOperations.decideFieldReview}
          input={{ fieldBalanceId: review.fieldBalance.id, reviewId: review.id, ...answer }}
          version={review.version}
          signer={signer}
          onClose={back}
          onWrongInput={back}
          onSigned={() => {
            say(`Decided: ${reviewWords[answer.decision]}.`);
            onClose();
          }}
        >
          {shown}
          <p>
            {reviewWords[answer.decision]}: {answer.reason}
          </p>
        </SignCommand>
      )}
    >
      {shown}
    </DecideThenSign>
  );
}
