import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { Link } from '../../ui/Link.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { FailStep } from './fail-step.tsx';
import { InstrumentField } from './InstrumentField.tsx';
import { justNow, LateEntry, latenessInput } from './late-entry.tsx';
import { MeasuredBefore } from './MeasuredBefore.tsx';
import { MeasuredNow } from './MeasuredNow.tsx';
import { ProcessForm } from './ProcessForm.tsx';
import { type Filled, formInput } from './process-form.ts';
import { isBuildTest, ReopenBuild } from './reopen-build.tsx';
import { SignedValues } from './SignedValues.tsx';
import { StepFacts } from './StepFacts.tsx';
import { SheetFields } from './sheets/SheetFields.tsx';
import { useSheet } from './sheets/use-sheet.ts';
import { type Entries, missingOf, type Step, type Traveler, verdictOf } from './traveler.ts';
import { UsedFields } from './UsedFields.tsx';
import { useAccepted } from './use-accepted.ts';
import { nothingUsed, usedInput, usedLeft } from './used-things.ts';

export interface StepSheetProps {
  traveler: Traveler;
  step: Step;
  signer: Signer;
  /** Asks for the form that raises a finding without a measurement. */
  onFinding: () => void;
}

/** The step whose turn it is: what to do, the caution where it can hurt, values as measured, the signature. */
export function StepSheet({ traveler, step: asked, signer, onFinding }: StepSheetProps) {
  const [entries, setEntries] = useState<Entries>({});
  const [instrumentId, setInstrumentId] = useState<string | null>(null);
  const [filled, setFilled] = useState<Filled>({});
  const [used, setUsed] = useState(nothingUsed);
  const [lateness, setLateness] = useState(justNow);
  const [asking, setAsking] = useState<'sign' | 'fail' | 'reopen'>();
  const { step, note } = useAccepted(asked, instrumentId);
  const sheet = useSheet(traveler, step, instrumentId);
  const verdict = sheet?.reasons?.length ? 'fail' : verdictOf(step, entries);
  const isTest = isBuildTest(traveler, step);
  const missing = missingOf(step, { entries, instrumentId, filled, sheet }) || usedLeft(step, used);
  const input = {
    stepId: step.id,
    values: step.measures.map((measure) => ({ measureId: measure.id, value: entries[measure.id] ?? '' })),
    form: formInput(step.form, filled),
    ...(sheet?.entry ? { sheet: sheet.entry } : {}),
    ...(instrumentId === null ? {} : { instrumentId }),
    ...usedInput(used),
    ...latenessInput(lateness),
  };
  const close = () => setAsking(undefined);
  const shown = <SignedValues traveler={traveler} step={step} entries={entries} filled={filled} sheet={sheet} />;
  return (
    <div className="stack">
      <StepFacts step={step} />
      {step.instruction ? <p>{step.instruction}</p> : null}
      {step.caution ? <Caution>{step.caution}</Caution> : null}
      {step.kind === 'inspect' ? <MeasuredBefore traveler={traveler} step={step} /> : null}
      <MeasuredNow traveler={traveler} step={step} entries={entries} onChange={setEntries} />
      <SheetFields sheet={sheet} />
      <ProcessForm fields={step.form} filled={filled} onChange={setFilled} />
      {step.instrumentKind ? (
        <InstrumentField kind={step.instrumentKind} value={instrumentId} onChange={setInstrumentId} />
      ) : null}
      <UsedFields step={step} used={used} onChange={setUsed} />
      {note ? <p className="small">{note}</p> : null}
      <LateEntry value={lateness} onChange={setLateness} />
      {step.peening ? (
        <p>
          This is peened in a lot between strips: <Link href="/peening">Peening</Link>.
        </p>
      ) : null}
      <div className="row actions">
        {isTest && verdict === 'fail' ? (
          <Button weight="next" isDisabled={missing !== ''} onPress={() => setAsking('reopen')}>
            The test failed: reopen the build
          </Button>
        ) : null}
        {step.peening ? null : verdict === 'fail' ? (
          <Button weight={isTest ? 'plain' : 'next'} isDisabled={missing !== ''} onPress={() => setAsking('fail')}>
            Outside the limits: raise a finding and sign
          </Button>
        ) : (
          <Button weight="next" isDisabled={missing !== ''} onPress={() => setAsking('sign')}>
            {step.kind === 'inspect' ? 'Inspected and good: sign' : 'Done and good: sign'}
          </Button>
        )}
        <Button onPress={onFinding}>Something is wrong: raise a finding</Button>
      </div>
      <p className="soft small" aria-live="polite">
        {missing}
      </p>
      {asking === 'sign' ? (
        <SignCommand
          op={travelerOperations.signStep}
          input={input}
          signer={signer}
          process={step.process}
          onClose={close}
          onSigned={() => {
            say(`“${step.title}” is signed.`);
            close();
          }}
        >
          {shown}
        </SignCommand>
      ) : null}
      {asking === 'reopen' ? (
        <ReopenBuild step={step} input={input} signer={signer} onClose={close}>
          {shown}
        </ReopenBuild>
      ) : null}
      {asking === 'fail' ? (
        <FailStep traveler={traveler} step={step} input={input} signer={signer} onClose={close}>
          {shown}
        </FailStep>
      ) : null}
    </div>
  );
}
