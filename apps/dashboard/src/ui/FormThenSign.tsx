import type { Operation } from '@hubwright/contracts/operation';
import { type ReactNode, useState } from 'react';
import type { ProblemError } from '../api/problem.ts';
import { CommandForm } from './CommandForm.tsx';
import { Dialog } from './Dialog.tsx';
import { SignCommand, type SignCommandProps } from './SignCommand.tsx';

/** What is signed once the form is filled in; `summary` says it in short, as it will be recorded. */
type Signing<O extends Operation> = Omit<SignCommandProps<O>, 'children' | 'onClose' | 'onWrongInput'> & {
  summary: ReactNode;
};

/**
 * A form, then its signature. Going back from the signature keeps what was entered, and what is refused for something typed comes back to
 * the form with why.
 */
export function FormThenSign<O extends Operation>(props: {
  title: string;
  width?: 'wide';
  onClose: () => void;
  /** Undefined while the form says too little to be signed. */
  signing: Signing<O> | undefined;
  /** Somebody wanted to go on while it says too little. */
  onTooLittle?: () => void;
  children: ReactNode;
}) {
  const { title, width, signing, onClose, onTooLittle } = props;
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  if (isSigning && signing) {
    const { summary, ...command } = signing;
    const goBack = (problem: ProblemError) => {
      setWrong(problem);
      setSigning(false);
    };
    // The generic parts are those of `signing`, which the compiler does not follow through the rest.
    const given = command as unknown as Omit<SignCommandProps<O>, 'children' | 'onClose'>;
    return (
      <SignCommand {...given} onClose={() => setSigning(false)} onWrongInput={goBack}>
        {summary}
      </SignCommand>
    );
  }
  return (
    <Dialog title={title} isOpen onClose={onClose} {...(width ? { width } : {})}>
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => (signing ? setSigning(true) : onTooLittle?.())}
        onCancel={onClose}
      >
        {props.children}
      </CommandForm>
    </Dialog>
  );
}
