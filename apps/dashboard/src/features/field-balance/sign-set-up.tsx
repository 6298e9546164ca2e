import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { Caution } from '../../ui/Caution.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { FoundWeights } from './FoundWeights.tsx';
import type { FieldBalance } from './field-balance.ts';
import { SafetyFields, SensorFields } from './SheetFields.tsx';
import { points, useSheet } from './sheet-draft.ts';

/** The sheet before any run, signed at the aircraft. */
export function SignSetUp({
  balance,
  signer,
  onClose,
}: {
  balance: FieldBalance;
  signer: Signer;
  onClose: () => void;
}) {
  const sheet = useSheet();
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const [isMissing, setMissing] = useState(false);
  if (isSigning && sheet.given)
    return (
      <SignCommand
        op={fieldBalanceOperations.signFieldSetUp}
        input={{ fieldBalanceId: balance.id, ...sheet.given }}
        version={balance.version}
        signer={signer}
        process="dynamic-balance"
        onClose={() => setSigning(false)}
        onWrongInput={(wrong) => {
          setProblem(wrong);
          setSigning(false);
        }}
        onSigned={() => {
          say(`${balance.number} is set up; the baseline is next.`);
          onClose();
        }}
      >
        <p>{Object.values(points).join('. ')}.</p>
        <p>
          {sheet.words.procedure}; wind {sheet.words.wind} kt; sensor {sheet.words.sensorPlace}, {sheet.sensorAxis};{' '}
          {sheet.words.phaseReference}
        </p>
      </SignCommand>
    );
  return (
    <Dialog title="Before any run" isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => (sheet.given ? setSigning(true) : setMissing(true))}
      >
        <Caution>
          A running propeller kills. Follow the current approved manual and the off-station procedure; only people
          licensed for it run the engine.
        </Caution>
        <SafetyFields sheet={sheet} mostWind={balance.spec?.mostWind} />
        <SensorFields sheet={sheet} />
        <FoundWeights places={balance.spec?.places ?? []} found={sheet.found} onChange={sheet.setFound} />
        {isMissing && !sheet.given ? (
          <p role="alert">Something on the sheet is not filled in or not confirmed.</p>
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
