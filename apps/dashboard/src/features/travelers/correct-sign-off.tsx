import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { MeasuredAgain, MeasuredAgainShown, useMeasuredAgain } from './measured-again.tsx';
import type { SignOff, Step, Traveler } from './traveler.ts';

/** A wrong sign-off is corrected by a new one with the reason; both stay in sight. Values are measured again, not taken over. */
export function CorrectSignOff(props: {
  traveler: Traveler;
  step: Step;
  signOff: SignOff;
  signer: Signer;
  onClose: () => void;
}) {
  const { onClose, step } = props;
  const again = useMeasuredAgain(props.traveler, step);
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  const missing = again.missing || (again.isOut ? 'A value lies outside its limits: raise a finding instead.' : '');
  if (isSigning)
    return (
      <SignCommand
        op={travelerOperations.correctSignOff}
        input={{ signOffId: props.signOff.id, reason, ...again.input }}
        signer={props.signer}
        process={step.process}
        onClose={onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={() => {
          say(`“${step.title}” is corrected; both signatures stay.`);
          onClose();
        }}
      >
        <MeasuredAgainShown of={again} />
        <p className="small">What was wrong: {reason}</p>
      </SignCommand>
    );
  return (
    <Dialog title={`Correct “${step.title}”`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => missing === '' && setSigning(true)}
        onCancel={onClose}
      >
        <TextField name="reason" label="What was wrong with it" value={reason} onChange={setReason} isRequired />
        <MeasuredAgain of={again} />
        <p className="soft small" aria-live="polite">
          {missing}
        </p>
      </CommandForm>
    </Dialog>
  );
}
