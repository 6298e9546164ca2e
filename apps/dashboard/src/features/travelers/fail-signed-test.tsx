import { useState } from 'react';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { MeasuredAgain, MeasuredAgainShown, useMeasuredAgain } from './measured-again.tsx';
import { ReopenBuild } from './reopen-build.tsx';
import type { Step, Traveler } from './traveler.ts';

/**
 * A test that stands signed as good but is found to have failed: it is entered as it really is, and the failure opens the build again. The
 * good signature stays in sight as corrected. What lies inside the limits opens nothing.
 */
export function FailSignedTest(props: { traveler: Traveler; step: Step; signer: Signer; onClose: () => void }) {
  const { onClose, step } = props;
  const again = useMeasuredAgain(props.traveler, step);
  const [isPlanning, setPlanning] = useState(false);
  const missing = again.missing || (again.isOut ? '' : 'Everything entered is inside its limits: that opens no build.');
  if (isPlanning)
    return (
      <ReopenBuild step={step} input={{ stepId: step.id, ...again.input }} signer={props.signer} onClose={onClose}>
        <MeasuredAgainShown of={again} />
      </ReopenBuild>
    );
  return (
    <Dialog title={`“${step.title}” failed after all`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to what is done again"
        onSubmit={() => missing === '' && setPlanning(true)}
        onCancel={onClose}
      >
        <p>Enter the test as it really reads. The signature as good stays in sight, as corrected.</p>
        <MeasuredAgain of={again} />
        <p className="soft small" aria-live="polite">
          {missing}
        </p>
      </CommandForm>
    </Dialog>
  );
}
