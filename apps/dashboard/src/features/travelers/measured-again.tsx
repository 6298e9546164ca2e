import { useState } from 'react';
import { InstrumentField } from './InstrumentField.tsx';
import { MeasuredNow } from './MeasuredNow.tsx';
import { ProcessForm } from './ProcessForm.tsx';
import { type Filled, formInput } from './process-form.ts';
import { SignedValues } from './SignedValues.tsx';
import { SheetFields } from './sheets/SheetFields.tsx';
import { useSheet } from './sheets/use-sheet.ts';
import { type Entries, missingOf, type Step, type Traveler, verdictOf } from './traveler.ts';
import { UsedFields } from './UsedFields.tsx';
import { useAccepted } from './use-accepted.ts';
import { nothingUsed, usedInput, usedLeft } from './used-things.ts';

/** Everything of a signed step entered anew: nothing is taken over from what was signed. */
export function useMeasuredAgain(traveler: Traveler, asked: Step) {
  const [entries, setEntries] = useState<Entries>({});
  const [filled, setFilled] = useState<Filled>({});
  const [used, setUsed] = useState(nothingUsed);
  const [instrumentId, setInstrumentId] = useState<string | null>(null);
  const { step, note } = useAccepted(asked, instrumentId);
  const sheet = useSheet(traveler, step, instrumentId);
  return {
    ...{ traveler, step, note, sheet, entries, setEntries, filled, setFilled, used, setUsed },
    ...{ instrumentId, setInstrumentId },
    missing: missingOf(step, { entries, instrumentId, filled, sheet }) || usedLeft(step, used),
    isOut: verdictOf(step, entries) === 'fail' || (sheet?.reasons?.length ?? 0) > 0,
    input: {
      values: step.measures.map((measure) => ({ measureId: measure.id, value: entries[measure.id] ?? '' })),
      form: formInput(step.form, filled),
      ...(sheet?.entry ? { sheet: sheet.entry } : {}),
      ...(instrumentId === null ? {} : { instrumentId }),
      ...usedInput(used),
    },
  };
}
type Again = ReturnType<typeof useMeasuredAgain>;

/** What the step asks to be entered, empty, as at its first signature. */
export function MeasuredAgain({ of }: { of: Again }) {
  const { traveler, step } = of;
  return (
    <>
      <MeasuredNow traveler={traveler} step={step} entries={of.entries} onChange={of.setEntries} />
      <SheetFields sheet={of.sheet} />
      <ProcessForm fields={step.form} filled={of.filled} onChange={of.setFilled} />
      <UsedFields step={step} used={of.used} onChange={of.setUsed} />
      {step.instrumentKind ? (
        <InstrumentField kind={step.instrumentKind} value={of.instrumentId} onChange={of.setInstrumentId} />
      ) : null}
      {of.note ? <p className="small">{of.note}</p> : null}
    </>
  );
}

/** The same as it stands above the signature. */
export function MeasuredAgainShown({ of }: { of: Again }) {
  const { traveler, step, entries, filled, sheet } = of;
  return <SignedValues traveler={traveler} step={step} entries={entries} filled={filled} sheet={sheet} />;
}
