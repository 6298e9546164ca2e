import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { useState } from 'react';
import { Caution } from '../../ui/Caution.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { FoundWeights } from './FoundWeights.tsx';
import { allPlaces, type FieldBalance } from './field-balance.ts';
import { SecondSensor } from './SecondSensor.tsx';
import { SafetyFields, SensorFields } from './SheetFields.tsx';
import { points, type Sheet, useSheet } from './sheet-draft.ts';

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
  const [isMissing, setMissing] = useState(false);
  const given = sheet.given && { fieldBalanceId: balance.id, ...sheet.given };
  return (
    <FormThenSign
      title="Before any run"
      width="wide"
      onClose={onClose}
      onTooLittle={() => setMissing(true)}
      signing={
        given && {
          op: fieldBalanceOperations.signFieldSetUp,
          input: given,
          version: balance.version,
          signer,
          process: 'dynamic-balance',
          onSigned: () => {
            say(`${balance.number} is set up; the baseline is next.`);
            onClose();
          },
          summary: <SetUpWords sheet={sheet} />,
        }
      }
    >
      <Caution>
        A running propeller kills. Follow the current approved manual and the off-station procedure; only people
        licensed for it run the engine.
      </Caution>
      <SafetyFields sheet={sheet} mostWind={balance.spec?.mostWind} />
      <SensorFields sheet={sheet} />
      <SecondSensor sheet={sheet} hasTwoPlanes={balance.spec?.secondPlane !== undefined} />
      <FoundWeights places={allPlaces(balance)} found={sheet.found} onChange={sheet.setFound} />
      {isMissing && !sheet.given ? <p role="alert">Something on the sheet is not filled in or not confirmed.</p> : null}
    </FormThenSign>
  );
}

function SetUpWords({ sheet: { words, sensorAxis, second } }: { sheet: Sheet }) {
  return (
    <>
      <p>{Object.values(points).join('. ')}.</p>
      <p>
        {words.procedure}; wind {words.wind} kt; sensor {words.sensorPlace}, {sensorAxis};{' '}
        {second ? `second sensor ${second.sensorPlace}, ${second.sensorAxis};` : ''} {words.phaseReference}
      </p>
    </>
  );
}
