import { type ReactNode, useState } from 'react';
import { RadioList } from './Checkbox.tsx';
import { CommandForm } from './CommandForm.tsx';
import { Dialog } from './Dialog.tsx';
import { TextField } from './TextField.tsx';

/** A decision with its reason, chosen among few, then signed. Going back from the signature keeps what was entered. */
export function DecideThenSign<D extends string>(props: {
  title: string;
  label?: string;
  /** What the reason should weigh. */
  hint?: string;
  choices: readonly { readonly value: D; readonly text: string }[];
  onClose: () => void;
  /** The signature of what was decided; `back` returns to the form. */
  signing: (answer: { decision: D; reason: string }, back: () => void) => ReactNode;
  /** What the decision is about. */
  children: ReactNode;
}) {
  const [decision, setDecision] = useState<D | null>(null);
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  if (isSigning && decision) return props.signing({ decision, reason }, () => setSigning(false));
  return (
    <Dialog title={props.title} isOpen onClose={props.onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => decision && reason.trim().length >= 3 && setSigning(true)}
        onCancel={props.onClose}
      >
        {props.children}
        <RadioList
          name="decision"
          label={props.label ?? 'Decision'}
          value={decision}
          onChange={setDecision}
          choices={props.choices}
          isRequired
        />
        <TextField
          name="reason"
          label="Why"
          {...(props.hint ? { hint: props.hint } : {})}
          value={reason}
          onChange={setReason}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
