import { type mediaDecisions, mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { useState } from 'react';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
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
  const [decision, setDecision] = useState<Decision | null>(null);
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const shown = (
    <p>
      {review.lot.number}, {review.workOrder.number}: {review.parts.map(({ position }) => position).join(', ')}. Media{' '}
      {review.media.code} failed its check: {review.reasons.join(' ')}
    </p>
  );
  if (isSigning && decision)
    return (
      <SignCommand
        op={mediaOperations.decideMediaReview}
        input={{ reviewId: review.id, decision, reason }}
        version={review.version}
        signer={props.signer}
        onClose={() => setSigning(false)}
        onSigned={() => {
          say(`Decided on ${review.lot.number}: ${decisionWords[decision]}.`);
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
    <Dialog title="What does the failed check mean for these parts?" isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => decision && reason && setSigning(true)}
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
          hint="What was found, against the strips of the lot"
          value={reason}
          onChange={setReason}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
