import { findingOperations } from '@hubwright/contracts/findings/operations';
import type { Sent } from '@hubwright/contracts/operation';
import type { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { type ReactNode, useState } from 'react';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
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
  const { traveler, step, signer, onClose } = props;
  const [draft, setDraft] = useState({ ...noFinding, damage: 'out-of-limits' as const } as typeof noFinding);
  return (
    <FormThenSign
      title="Outside the limits"
      width="wide"
      onClose={onClose}
      signing={{
        op: findingOperations.failStep,
        input: { ...props.input, ...findingInput(draft) },
        signer,
        process: step.process,
        onSigned: (reply) => {
          say(`Finding ${reply.number} is raised; an inspector decides it.`);
          onClose();
        },
        summary: (
          <>
            {props.children}
            <p className="small">
              {draft.place}: {draft.description}
            </p>
          </>
        ),
      }}
    >
      <FindingFields partClass={traveler.partClass} draft={draft} onChange={setDraft} />
    </FormThenSign>
  );
}
