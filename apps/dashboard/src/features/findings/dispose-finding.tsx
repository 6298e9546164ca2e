import type { Disposition } from '@hubwright/contracts/findings/areas';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import type { Reply } from '@hubwright/contracts/operation';
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
import { Decided } from './Decided.tsx';
import type { Finding } from './findings.ts';
import { type PartDraft, PartsNeeded, partsInput } from './parts-needed.tsx';
import { type RepairDraft, RepairPlan, repairInput } from './repair-plan.tsx';

const choices = [
  { value: 'serviceable', text: 'Serviceable: within limits as it is' },
  { value: 'repair', text: 'Repair, by the steps below' },
  { value: 'reject', text: 'Reject: it goes no further' },
] as const;

const { disposeFinding, supersedeDisposition } = findingOperations;
/**
 * A disposition is a signature: nothing is chosen beforehand, repair names its steps, and parts become demand. A finding that
 * has one is decided anew with a reason; the earlier one stays on record.
 */
export function DisposeFinding({
  finding,
  signer,
  onClose,
}: {
  finding: Finding;
  signer: Signer;
  onClose: () => void;
}) {
  const isAnew = finding.disposition !== null;
  const { currency } = useShop();
  const [disposition, setDisposition] = useState<Disposition | null>(null);
  const [reason, setReason] = useState('');
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
    const signing = {
      version: finding.version,
      signer,
      onClose,
      onWrongInput: (problem: ProblemError) => {
        setWrong(problem);
        setSigning(false);
      },
      onSigned: (reply: Reply<typeof disposeFinding>) => {
        say(
          `${finding.number} is decided: ${reply.disposition}${reply.overAndAbove ? '; the customer is asked first' : ''}.`,
        );
        onClose();
      },
    };
    const decided = <Decided finding={finding} input={input} parts={parts} />;
    if (!isAnew)
      return (
        <SignCommand op={disposeFinding} input={input} {...signing}>
          {decided}
        </SignCommand>
      );
    return (
      <SignCommand op={supersedeDisposition} input={{ ...input, reason }} {...signing}>
        <p>
          In place of “{finding.disposition}”: {reason}
        </p>
        {decided}
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Decide ${finding.number}${isAnew ? ' anew' : ''}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => disposition !== null && setSigning(true)}
        onCancel={onClose}
      >
        {isAnew ? (
          <>
            <p className="soft small">
              Now: {finding.disposition}. It stays on record; open steps, parts not issued and money nobody approved are
              taken back.
            </p>
            <TextField name="reason" label="Why it no longer holds" value={reason} onChange={setReason} isRequired />
          </>
        ) : null}
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
