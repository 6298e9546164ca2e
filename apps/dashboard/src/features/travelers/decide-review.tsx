import { type reviewDecisions, reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { useState } from 'react';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { decisionWords, type Review, valueWords } from './ReviewTable.tsx';

type Decision = (typeof reviewDecisions)[number];

const here: readonly Decision[] = ['stands', 'measure-again'];
const gone: readonly Decision[] = ['stands', 'customer-told'];

/** What a doubtful reading means, decided and signed by an inspector with the reason. */
export function DecideReview({ review, signer, onClose }: { review: Review; signer: Signer; onClose: () => void }) {
  const possible = review.workOrder.releasedAt ? gone : here;
  const [decision, setDecision] = useState<Decision | null>(null);
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
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
  if (isSigning && decision)
    return (
      <SignCommand
        op={reviewOperations.decideCalibrationReview}
        input={{ reviewId: review.id, decision, reason }}
        version={review.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onWrongInput={() => setSigning(false)}
        onSigned={() => {
          say(`Decided: ${decisionWords[decision]}.`);
          onClose();
        }}
      >
        {shown}
        <p>
          {decisionWords[decision]}: {reason}
        </p>
      </SignCommand>
    );
  return (
    <Dialog title="What does this reading mean now?" isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => decision && setSigning(true)}
        onCancel={onClose}
      >
        {shown}
        <RadioList
          name="decision"
          label="Decision"
          value={decision}
          onChange={setDecision}
          choices={possible.map((value) => ({ value, text: decisionWords[value] }))}
          isRequired
        />
        <TextField
          name="reason"
          label="Why"
          hint="The error found against the distance to the limits"
          value={reason}
          onChange={setReason}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
