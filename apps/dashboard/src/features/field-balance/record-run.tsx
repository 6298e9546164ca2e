import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import type { FieldRun } from '@hubwright/contracts/field-balance/shapes';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { countingRuns, type FieldBalance, placeChoices, runWords, sensorsOf } from './field-balance.ts';
import { type Reading, ReadingFields } from './ReadingFields.tsx';

const unread: Reading = { rpm: '', amplitude: '', phase: '', amplitude2: '', phase2: '' };

function TrialFields(props: {
  balance: FieldBalance;
  mass: string;
  place: string | null;
  onMass: (mass: string) => void;
  onPlace: (place: string) => void;
}) {
  return (
    <FieldGroup
      title="Trial weight"
      note="It comes off again after the run. One that stays is fitted from stock first."
    >
      <DecimalField
        name="trial/mass"
        label="Mass"
        unit="g"
        decimals={2}
        value={props.mass}
        onChange={props.onMass}
        isRequired
      />
      <Select
        name="trial/place"
        label="Place"
        value={props.place}
        onChange={props.onPlace}
        choices={placeChoices(props.balance)}
        isRequired
      />
    </FieldGroup>
  );
}

/** The readings of one run as the instrument shows them, or a wrong reading put right. */
export function RecordRun(props: {
  balance: FieldBalance;
  kind: FieldRun['kind'];
  wrong?: FieldRun;
  onClose: () => void;
}) {
  const { balance, kind, wrong, onClose } = props;
  const record = useCommand(fieldBalanceOperations.recordFieldRun);
  const sensors = sensorsOf(balance.setUp);
  const speeds = (kind === 'baseline' && !wrong ? undefined : countingRuns(balance)[0]?.readings) ?? [];
  const [readings, setReadings] = useState<readonly Reading[]>(() => Array(Math.max(1, speeds.length)).fill(unread));
  const [trial, setTrial] = useState<{ mass: string; place: string | null }>({ mass: '', place: null });
  const [reason, setReason] = useState('');
  const send = () => {
    const read = readings.map(({ rpm, amplitude, phase, amplitude2, phase2 }) => ({
      ...{ rpm: Number(rpm), amplitude, phase },
      ...(sensors ? { second: { amplitude: amplitude2, phase: phase2 } } : {}),
    }));
    const place = trial.place === null ? {} : { place: trial.place };
    const input = {
      ...{ fieldBalanceId: balance.id, kind, readings: read },
      ...(kind === 'trial' ? { trial: { mass: trial.mass, ...place } } : {}),
      ...(wrong ? { supersedesId: wrong.id, reason } : {}),
    };
    const done = ({ surprising }: { surprising: boolean }) => {
      say(surprising ? 'On record. No linear propeller reads like this: look at the flag.' : 'The run is on record.');
      onClose();
    };
    record.mutate({ input, version: balance.version }, { onSuccess: done });
  };
  const set = (at: number) => (reading: Reading) =>
    setReadings(readings.map((one, index) => (index === at ? reading : one)));
  return (
    <Dialog title={wrong ? 'Put a reading right' : runWords[kind]} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={record.error}
        isPending={record.isPending}
        submit={wrong ? 'Put it right' : 'Put the run on record'}
        onSubmit={send}
        onCancel={onClose}
      >
        <Caution>
          Stop the engine, keys out, before anyone goes near the propeller, with every change of weights.
        </Caution>
        {kind === 'trial' ? (
          <TrialFields
            balance={balance}
            {...trial}
            onMass={(mass) => setTrial({ ...trial, mass })}
            onPlace={(place) => setTrial({ ...trial, place })}
          />
        ) : null}
        {readings.map((reading, at) => (
          <ReadingFields
            // biome-ignore lint/suspicious/noArrayIndexKey: speeds are told apart by their order
            key={at}
            at={at}
            near={speeds[at]?.rpm}
            unit={balance.spec?.unit ?? ''}
            sensors={sensors}
            reading={reading}
            onChange={set(at)}
          />
        ))}
        {speeds.length === 0 && readings.length < 6 ? (
          <div>
            <Button weight="quiet" onPress={() => setReadings([...readings, unread])}>
              Another speed
            </Button>
          </div>
        ) : null}
        {wrong ? (
          <TextField name="reason" label="What was wrong" value={reason} onChange={setReason} isRequired />
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
