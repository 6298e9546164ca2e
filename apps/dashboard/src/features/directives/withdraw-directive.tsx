import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { calledOf, type DirectiveRow } from './directives.ts';

export function WithdrawDirective(props: { directive: DirectiveRow; signer: Signer; onClose: () => void }) {
  const { directive, onClose } = props;
  const [reason, setReason] = useState('');
  const called = calledOf(directive);
  return (
    <FormThenSign
      title={`Withdraw ${called}?`}
      onClose={onClose}
      signing={{
        op: directiveOperations.withdrawDirective,
        input: { directiveId: directive.id, reason },
        version: directive.version,
        signer: props.signer,
        onSigned: () => {
          say(`${called} is withdrawn; what it superseded stands again.`);
          onClose();
        },
        summary: (
          <p>
            {called} is withdrawn: {reason}
          </p>
        ),
      }}
    >
      <p>A revised one is not withdrawn: put the revision on record and say that it supersedes this one.</p>
      <TextField
        name="reason"
        label="Who cancelled it, or what was wrong"
        value={reason}
        onChange={setReason}
        isRequired
      />
    </FormThenSign>
  );
}
