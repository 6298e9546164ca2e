import { type ReactNode, type SyntheticEvent, useMemo } from 'react';
import { Form } from 'react-aria-components';
import type { ProblemError } from '../api/problem.ts';
import { Button } from './Button.tsx';
import { FormProblem } from './FormProblem.tsx';
import { fieldErrors } from './field-errors.ts';

export interface CommandFormProps {
  /** The command's last refusal; its pointers appear at the fields named like them. */
  problem: ProblemError | null;
  isPending: boolean;
  /** The words on the button: what will be done, as a verb. */
  submit: string;
  onSubmit: () => void;
  onCancel?: () => void;
  /** Name of the entry to type into again after a refusal, such as the password. */
  retryField?: string;
  children: ReactNode;
}

/**
 * A message goes as soon as its entry is typed into. Left to the widgets it goes when the entry is left, which moves the
 * button away under the finger that is pressing it.
 */
function clearOnTyping({ target }: SyntheticEvent<HTMLElement>): void {
  if (target instanceof HTMLElement && target.getAttribute('aria-invalid') === 'true')
    target.dispatchEvent(new Event('change', { bubbles: true }));
}

/** A form around one command: fields, the refusal if there was one, and the one button that does it. */
export function CommandForm({
  problem,
  isPending,
  submit,
  onSubmit,
  onCancel,
  retryField,
  children,
}: CommandFormProps) {
  // The same object as long as the problem is the same: a new one would put messages back that typing has cleared.
  const errors = useMemo(() => fieldErrors(problem?.facts.errors ?? []), [problem]);
  return (
    <Form
      className="stack"
      validationBehavior="aria"
      validationErrors={errors}
      onSubmit={(event) => {
        event.preventDefault();
        // React hands submits of a dialog's form to the form the dialog was opened from: stop it here.
        event.stopPropagation();
        if (!isPending) onSubmit();
      }}
    >
      <div className="stack" onInput={clearOnTyping}>
        {children}
      </div>
      <FormProblem problem={problem} {...(retryField ? { retryField } : {})} />
      <div className="row actions">
        <Button type="submit" weight="next" isPending={isPending}>
          {submit}
        </Button>
        {onCancel ? (
          <Button weight="quiet" onPress={onCancel}>
            Cancel
          </Button>
        ) : null}
      </div>
    </Form>
  );
}
