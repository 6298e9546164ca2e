import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { queryFor } from '../../api/query.ts';
import { formatDate } from '../../format/dates.ts';
import { Caution } from '../../ui/Caution.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { FoundWeights } from './FoundWeights.tsx';
import type { FieldBalance } from './field-balance.ts';

const points = {
  tiedDown: 'Aircraft chocked and tied down',
  areaClear: 'Propeller plane and slipstream clear of people and loose things',
  cowlingClosed: 'Cowling closed or secured as the procedure says',
  brakesSet: 'Brakes set, somebody at the controls',
  observerPosted: 'Observer posted, signals agreed',
} as const;
type Point = keyof typeof points;
const unchecked: Record<Point, boolean> = {
  ...{ tiedDown: false, areaClear: false, cowlingClosed: false, brakesSet: false, observerPosted: false },
};
const emptyWords = { procedure: '', weather: '', wind: '', sensorPlace: '', phaseReference: '' };
const axes = [
  { value: 'vertical', text: 'Vertical' },
  { value: 'horizontal', text: 'Horizontal' },
] as const;
const ways = [
  { value: 'clockwise', text: 'Clockwise' },
  { value: 'counterclockwise', text: 'Counterclockwise' },
] as const;
type FoundDraft = { place: string; mass: string; stays: boolean };

/** Everything on the sheet as it is filled in; nothing of it is filled in for anyone. */
function useSheet() {
  const [words, setWords] = useState(emptyWords);
  const [sensorAxis, setAxis] = useState<'vertical' | 'horizontal' | null>(null);
  const [counting, setCounting] = useState<'clockwise' | 'counterclockwise' | null>(null);
  const [instrumentId, setInstrument] = useState<string | null>(null);
  const [checked, setChecked] = useState(unchecked);
  const [found, setFound] = useState<readonly FoundDraft[]>([]);
  const isWhole = sensorAxis && counting && instrumentId && Object.values(checked).every(Boolean);
  return {
    ...{ words, setWords, sensorAxis, setAxis, counting, setCounting, instrumentId, setInstrument },
    ...{ checked, setChecked, found, setFound },
    given: isWhole
      ? { ...words, sensorAxis, counting, instrumentId, ...(checked as Record<Point, true>), found: [...found] }
      : undefined,
  };
}
type Sheet = ReturnType<typeof useSheet>;

function SensorFields({ sheet }: { sheet: Sheet }) {
  const { words, setWords } = sheet;
  const set = (name: keyof typeof words) => (text: string) => setWords({ ...words, [name]: text });
  const input = { kind: 'vibration-analyser', limit: 50 } as const;
  const instruments = useQuery(queryFor(processOperations.listInstruments, input)).data?.rows ?? [];
  return (
    <FieldGroup title="Sensor and phase">
      <TextField
        name="sensorPlace"
        label="Sensor sits"
        value={words.sensorPlace}
        onChange={set('sensorPlace')}
        isRequired
      />
      <Select
        name="sensorAxis"
        label="Sensor axis"
        value={sheet.sensorAxis}
        onChange={sheet.setAxis}
        choices={axes}
        isRequired
      />
      <TextField
        name="phaseReference"
        label="Phase reference"
        hint="Which tape on which blade"
        value={words.phaseReference}
        onChange={set('phaseReference')}
        isRequired
      />
      <Select
        name="counting"
        label="Instrument counts phase"
        hint="As seen from the front"
        value={sheet.counting}
        onChange={sheet.setCounting}
        choices={ways}
        isRequired
      />
      <Select
        name="instrumentId"
        label="Instrument"
        value={sheet.instrumentId}
        onChange={sheet.setInstrument}
        choices={instruments
          .filter(({ inService }) => inService)
          .map(({ id, tag, title, inCalibration, calibrationDueOn }) => ({
            value: id,
            text: `${tag} ${title}, ${inCalibration ? 'calibrated until' : 'OVERDUE since'} ${formatDate(calibrationDueOn)}`,
          }))}
        isRequired
      />
    </FieldGroup>
  );
}

function SafetyFields({ sheet, mostWind }: { sheet: Sheet; mostWind: string | undefined }) {
  const { words, setWords, checked, setChecked } = sheet;
  const set = (name: keyof typeof words) => (text: string) => setWords({ ...words, [name]: text });
  return (
    <>
      <FieldGroup title="Procedure and weather">
        <TextField
          name="procedure"
          label="Off-station procedure"
          value={words.procedure}
          onChange={set('procedure')}
          isRequired
        />
        <DecimalField
          name="wind"
          label="Wind"
          hint={mostWind ? `At most ${mostWind} kt` : ''}
          unit="kt"
          decimals={1}
          value={words.wind}
          onChange={set('wind')}
          isRequired
        />
        <TextField name="weather" label="Weather" value={words.weather} onChange={set('weather')} isRequired />
      </FieldGroup>
      <fieldset className="field-group">
        <legend>Looked at, one by one</legend>
        {(Object.keys(points) as Point[]).map((point) => (
          <Checkbox key={point} isSelected={checked[point]} onChange={(is) => setChecked({ ...checked, [point]: is })}>
            {points[point]}
          </Checkbox>
        ))}
      </fieldset>
    </>
  );
}

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
