import type { ReactNode } from 'react';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { TextField } from '../../ui/TextField.tsx';

/** A change of someone's account that asks for nothing but its reason, which stays on the record. */
export function ReasonForm(props: {
  problem: ProblemError | null;
  isPending: boolean;
  submit: string;
  onSubmit: (reason: string) => void;
  onCancel: () => void;
  children: ReactNode;
}) {
  const [reason, setReason] = useState('');
  return (
    <CommandForm
      problem={props.problem}
      isPending={props.isPending}
      submit={props.submit}
      onSubmit={() => props.onSubmit(reason)}
      onCancel={props.onCancel}
    >
      {props.children}
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </CommandForm>
  );
}
