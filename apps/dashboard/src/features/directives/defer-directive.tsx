import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { calledOf, type Standing } from './directives.ts';

/** Puts an open directive off until a day it allows; signed by who approves for return to service. */
export function DeferDirective(props: { of: Standing; workOrderId: string; signer: Signer; onClose: () => void }) {
  const { of, workOrderId, onClose } = props;
  const [until, setUntil] = useState(useToday());
  const [reason, setReason] = useState('');
  const called = calledOf(of.directive);
  return (
    <FormThenSign
      title={`Put off ${called}?`}
      onClose={onClose}
      signing={{
        op: directiveOperations.deferDirective,
        input: { workOrderId, directiveId: of.directive.id, itemId: of.itemId, until, reason },
        signer: props.signer,
        onSigned: onClose,
        summary: (
          <p>
            {called}, {of.item}, is put off until <DateText date={until} />: {reason}
          </p>
        ),
      }}
    >
      <p>It allows at most {of.directive.deferDays} days from the first time. The record of the release says it.</p>
      <DateField name="until" label="Until" value={until} onChange={setUntil} isRequired />
      <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
    </FormThenSign>
  );
}
