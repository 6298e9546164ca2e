import { findingOperations } from '@hubwright/contracts/findings/operations';
import type { Sent } from '@hubwright/contracts/operation';
import type { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { type ReactNode, useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { FindingFields, findingInput, noFinding } from './finding-fields.tsx';
import type { Step, Traveler } from './traveler.ts';

/** A value lies outside its limits: say what is wrong, then sign the values as measured. A finding is raised by the same signature. */
export function FailStep(props: {
  traveler: Traveler;
  step: Step;
  input: Omit<Sent<typeof travelerOperations.signStep>, 'signature'>;
  signer: Signer;
  onClose: () => void;
  children: ReactNode;
}) {
  const [draft, setDraft] = useState({ ...noFinding, damage: 'out-of-limits' as const } as typeof noFinding);
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  if (isSigning) {
    return (
      <SignCommand
        op={findingOperations.failStep}
        input={{ ...props.input, ...findingInput(draft) }}
        signer={props.signer}
        process={props.step.process}
        onClose={props.onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={(reply) => {
          say(`Finding ${reply.number} is raised; an inspector decides it.`);
          props.onClose();
        }}
      >
        {props.children}
        <p className="small">
          {draft.place}: {draft.description}
        </p>
      </SignCommand>
    );
  }
  return (
    <Dialog title="Outside the limits" isOpen onClose={props.onClose} width="wide">
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={props.onClose}
      >
        <FindingFields partClass={props.traveler.partClass} draft={draft} onChange={setDraft} />
      </CommandForm>
    </Dialog>
  );
}
