import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { InstrumentField } from './InstrumentField.tsx';
import { MeasuredNow } from './MeasuredNow.tsx';
import { ProcessForm } from './ProcessForm.tsx';
import { type Filled, formInput } from './process-form.ts';
import { SignedValues } from './SignedValues.tsx';
import { SheetFields } from './sheets/SheetFields.tsx';
import { useSheet } from './sheets/use-sheet.ts';
import { type Entries, missingOf, type SignOff, type Step, type Traveler, verdictOf } from './traveler.ts';
import { UsedFields } from './UsedFields.tsx';
import { useAccepted } from './use-accepted.ts';
import { nothingUsed, usedInput, usedLeft } from './used-things.ts';

/** A wrong sign-off is corrected by a new one with the reason; both stay in sight. Values are measured again, not taken over. */
export function CorrectSignOff(props: {
  traveler: Traveler;
  step: Step;
  signOff: SignOff;
  signer: Signer;
  onClose: () => void;
}) {
  const { onClose } = props;
  const [entries, setEntries] = useState<Entries>({});
  const [filled, setFilled] = useState<Filled>({});
  const [used, setUsed] = useState(nothingUsed);
  const [reason, setReason] = useState('');
  const [instrumentId, setInstrumentId] = useState<string | null>(null);
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  const { step, note } = useAccepted(props.step, instrumentId);
  const sheet = useSheet(props.traveler, step, instrumentId);
  const missing =
    missingOf(step, { entries, instrumentId, filled, sheet }) ||
    usedLeft(step, used) ||
    (verdictOf(step, entries) === 'fail' || sheet?.reasons?.length
      ? 'A value lies outside its limits: raise a finding instead.'
      : '');
  if (isSigning) {
    const values = step.measures.map((measure) => ({ measureId: measure.id, value: entries[measure.id] ?? '' }));
    return (
      <SignCommand
        op={travelerOperations.correctSignOff}
        input={{
          signOffId: props.signOff.id,
          values,
          reason,
          form: formInput(step.form, filled),
          ...(sheet?.entry ? { sheet: sheet.entry } : {}),
          ...(instrumentId === null ? {} : { instrumentId }),
          ...usedInput(used),
        }}
        signer={props.signer}
        process={step.process}
        onClose={onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={() => {
          say(`“${step.title}” is corrected; both signatures stay.`);
          onClose();
        }}
      >
        <SignedValues traveler={props.traveler} step={step} entries={entries} filled={filled} sheet={sheet} />
        <p className="small">What was wrong: {reason}</p>
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Correct “${step.title}”`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => missing === '' && setSigning(true)}
        onCancel={onClose}
      >
        <TextField name="reason" label="What was wrong with it" value={reason} onChange={setReason} isRequired />
        <MeasuredNow traveler={props.traveler} step={step} entries={entries} onChange={setEntries} />
        <SheetFields sheet={sheet} />
        <ProcessForm fields={step.form} filled={filled} onChange={setFilled} />
        <UsedFields step={step} used={used} onChange={setUsed} />
        {step.instrumentKind ? (
          <InstrumentField kind={step.instrumentKind} value={instrumentId} onChange={setInstrumentId} />
        ) : null}
        {note ? <p className="small">{note}</p> : null}
        <p className="soft small" aria-live="polite">
          {missing}
        </p>
      </CommandForm>
    </Dialog>
  );
}
