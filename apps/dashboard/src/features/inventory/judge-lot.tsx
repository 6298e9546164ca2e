import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { problemFrom } from '../../api/problem.ts';
import { DateText } from '../../format/values.tsx';
import { RadioList } from '../../ui/Checkbox.tsx';
import { SignatureDialog } from '../../ui/SignatureDialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { BinField, type LotDialogProps, LotForm } from './lot-form.tsx';
import { type Lot, onHandAt, type Signer } from './lots.ts';

type Verdict = 'accepted' | 'rejected';
const verdicts = [
  { value: 'accepted', text: 'Accept: it may be used' },
  { value: 'rejected', text: 'Reject: it may not be used' },
] as const;

const noVerdict = problemFrom(422, {
  type: '/problems/invalid-input',
  detail: 'Nothing is signed yet.',
  errors: [{ pointer: '/verdict', detail: 'Choose whether it may be used' }],
});

/** What the signature covers, as it will be recorded. */
function Judged({ lot, verdict, note, bin }: { lot: Lot; verdict: Verdict; note: string; bin: string }) {
  return (
    <div className="stack tight">
      <p>
        <strong>{verdict === 'accepted' ? 'Accepted' : 'Rejected'}:</strong> <span className="code">{lot.code}</span>,{' '}
        {onHandAt(lot, 'quarantine')} {lot.part.issueUnit} of <span className="code">{lot.part.number}</span>{' '}
        {lot.part.description}
      </p>
      <p className="small">
        Supplier’s lot {lot.supplierLot}, certificate {lot.certificate || 'none'}
        {lot.expiresOn ? (
          <>
            , not to be used from <DateText date={lot.expiresOn} /> on
          </>
        ) : null}
      </p>
      {verdict === 'accepted' && bin ? <p className="small">Put away in bin {bin.toUpperCase()}</p> : null}
      {note ? <p className="small">{note}</p> : null}
    </div>
  );
}

/** Accept or reject a lot in quarantine: the verdict first, nothing chosen beforehand, then the signature. */
export function JudgeDialog({ lot, onClose, signer }: LotDialogProps & { signer: Signer }) {
  const judge = useCommand(inventoryOperations.judgeLot);
  const [verdict, setVerdict] = useState<Verdict | null>(null);
  const [note, setNote] = useState('');
  const [bin, setBin] = useState('');
  const [step, setStep] = useState<'judge' | 'missing' | 'sign'>('judge');
  if (step === 'sign' && verdict) {
    return (
      <SignatureDialog
        isOpen
        onClose={onClose}
        meaning={inventoryOperations.judgeLot.signs ?? ''}
        signer={signer}
        problem={judge.error}
        isPending={judge.isPending}
        onSign={(signature) =>
          judge.mutate(
            {
              input: { lotId: lot.id, verdict, note, signature, ...(verdict === 'accepted' && bin ? { bin } : {}) },
              version: lot.version,
            },
            {
              onSuccess: () => {
                say(`${lot.code} is ${verdict}.`);
                onClose();
              },
            },
          )
        }
      >
        <Judged lot={lot} verdict={verdict} note={note} bin={bin} />
      </SignatureDialog>
    );
  }
  return (
    <LotForm
      title={`Judge ${lot.code}`}
      command={{ error: step === 'missing' ? noVerdict : null, isPending: false }}
      submit="Go on to sign"
      onSubmit={() => setStep(verdict ? 'sign' : 'missing')}
      onClose={onClose}
    >
      <RadioList
        name="verdict"
        label="After looking at parts and paper"
        value={verdict}
        onChange={setVerdict}
        choices={verdicts}
        isRequired
      />
      {verdict === 'accepted' ? (
        <BinField
          name="bin"
          label="Straight into bin"
          hint="Leave empty to put it away later"
          value={bin}
          onChange={setBin}
        />
      ) : null}
      <TextField name="note" label="Note" hint="What you saw" lines={2} value={note} onChange={setNote} />
    </LotForm>
  );
}
