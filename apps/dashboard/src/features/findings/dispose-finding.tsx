import type { Disposition } from '@hubwright/contracts/findings/areas';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { minorDigits, parseMoney } from '../../format/money.ts';
import { useShop } from '../../format/shop-context.tsx';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Finding } from './findings.ts';
import { type PartDraft, PartsNeeded, partsInput } from './parts-needed.tsx';
import { type RepairDraft, RepairPlan, repairInput } from './repair-plan.tsx';

const choices = [
  { value: 'serviceable', text: 'Serviceable: within limits as it is' },
  { value: 'repair', text: 'Repair, by the steps below' },
  { value: 'reject', text: 'Reject: it goes no further' },
] as const;

/** A disposition is a signature: nothing is chosen beforehand, repair names its steps, and parts become demand. */
export function DisposeFinding({
  finding,
  signer,
  onClose,
}: {
  finding: Finding;
  signer: Signer;
  onClose: () => void;
}) {
  const { currency } = useShop();
  const [disposition, setDisposition] = useState<Disposition | null>(null);
  const [note, setNote] = useState('');
  const [steps, setSteps] = useState<RepairDraft[]>([]);
  const [parts, setParts] = useState<PartDraft[]>([]);
  const [labour, setLabour] = useState('');
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  if (isSigning && disposition) {
    const input = {
      findingId: finding.id,
      disposition,
      note,
      steps: disposition === 'repair' ? repairInput(steps) : [],
      parts: disposition === 'serviceable' ? [] : partsInput(parts),
      labourMinor: labour === '' ? 0 : (parseMoney(labour, currency) ?? Number.NaN),
    };
    return (
      <SignCommand
        op={findingOperations.disposeFinding}
        input={input}
        version={finding.version}
        signer={signer}
        onClose={onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={(reply) => {
          say(
            `${finding.number} is decided: ${reply.disposition}${reply.overAndAbove ? '; the customer is asked first' : ''}.`,
          );
          onClose();
        }}
      >
        <p>
          <strong>{disposition}</strong>: {finding.number}, {finding.traveler.title}, {finding.areaTitle},{' '}
          {finding.place}
        </p>
        <p className="small">{finding.description}</p>
        {note ? <p className="small">{note}</p> : null}
        <ul className="small">
          {input.steps.map((step) => (
            <li key={step.title}>
              {step.title} ({step.process.replaceAll('-', ' ')}, {step.standardMinutes} min)
            </li>
          ))}
          {input.parts.length > 0
            ? parts.map((each) => (
                <li key={`${each.part?.id} ${each.position}`}>
                  {each.quantity} {each.part?.name} for {each.position}
                </li>
              ))
            : null}
        </ul>
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Decide ${finding.number}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => disposition !== null && setSigning(true)}
        onCancel={onClose}
      >
        <RadioList
          name="disposition"
          label="After inspection, by the current manual revision"
          value={disposition}
          onChange={setDisposition}
          choices={choices}
          isRequired
        />
        <TextField name="note" label="Note" lines={2} value={note} onChange={setNote} />
        {disposition === 'repair' ? <RepairPlan steps={steps} onChange={setSteps} /> : null}
        {disposition === 'repair' || disposition === 'reject' ? (
          <PartsNeeded parts={parts} onChange={setParts} />
        ) : null}
        {disposition === 'repair' || disposition === 'reject' ? (
          <DecimalField
            name="labourMinor"
            label="Labour to charge"
            unit={currency}
            decimals={minorDigits(currency)}
            value={labour}
            onChange={setLabour}
          />
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
