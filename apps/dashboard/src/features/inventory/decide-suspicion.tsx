import { handlingOperations } from '@hubwright/contracts/inventory/handling-operations';
import { useState } from 'react';
import { RadioList } from '../../ui/Checkbox.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { LotDialogProps } from './lot-form.tsx';
import type { Signer } from './lots.ts';

type Decision = 'cleared' | 'confirmed';
const decisions = [
  { value: 'cleared', text: 'Cleared: it is judged anew like any lot that arrives' },
  { value: 'confirmed', text: 'Confirmed: it is rejected for good' },
] as const;

/** An inspector decides what somebody else reported, on a basis that is named. */
export function DecideSuspicionDialog({ lot, onClose, signer }: LotDialogProps & { signer: Signer }) {
  const [decision, setDecision] = useState<Decision | null>(null);
  const [basis, setBasis] = useState('');
  const [reportedTo, setReportedTo] = useState('');
  const signing = decision && {
    op: handlingOperations.decideSuspicion,
    input: { lotId: lot.id, decision, basis, reportedTo },
    version: lot.version,
    signer,
    summary: (
      <p>
        <strong>{decision === 'cleared' ? 'Cleared' : 'Confirmed'}:</strong> <span className="code">{lot.code}</span>,
        reported for “{lot.suspicion?.reason}”. On the basis of: {basis}
      </p>
    ),
    onSigned: onClose,
  };
  return (
    <FormThenSign title={`Decide the suspicion against ${lot.code}`} onClose={onClose} signing={signing ?? undefined}>
      <p>
        {lot.suspicion?.reporter} reported: {lot.suspicion?.reason}
      </p>
      <RadioList
        name="decision"
        label="After looking into it"
        value={decision}
        onChange={setDecision}
        choices={decisions}
        isRequired
      />
      <TextField name="basis" label="On what basis" lines={2} value={basis} onChange={setBasis} isRequired />
      <TextField
        name="reportedTo"
        label="Reported to"
        hint="Maker, supplier or authority, where it was"
        value={reportedTo}
        onChange={setReportedTo}
      />
    </FormThenSign>
  );
}
