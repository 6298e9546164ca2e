import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { countingRuns, type FieldBalance, grams, sensorAfterSensor, sensorsOf } from './field-balance.ts';

type Props = { balance: FieldBalance; signer: Signer; onClose: () => void };

function Summary({ balance }: { balance: FieldBalance }) {
  const runs = countingRuns(balance);
  const sensors = sensorsOf(balance.setUp);
  const said = (at: number) => {
    const run = runs.at(at);
    const read = run ? sensorAfterSensor(run) : [];
    return read
      .map(({ rpm, sensor, amplitude, phase }) => {
        const where = sensors ? ` (${sensors[sensor]})` : '';
        return `${amplitude} ${balance.spec?.unit} at ${phase}°, ${rpm} rpm${where}`;
      })
      .join('; ');
  };
  return (
    <>
      <p>Before: {said(0)}</p>
      <p>After: {said(-1)}</p>
      <p>Weights: {balance.standing.map(({ place, mass }) => `${place} ${grams(mass)}`).join(', ') || 'none stand'}</p>
    </>
  );
}

/** The technician's signature on the last readings and the weights as they stand. */
export function SignBalance({ balance, signer, onClose }: Props) {
  const [remarks, setRemarks] = useState('');
  return (
    <FormThenSign
      title="The propeller is balanced"
      onClose={onClose}
      signing={{
        op: fieldBalanceOperations.signFieldBalance,
        input: { fieldBalanceId: balance.id, remarks },
        version: balance.version,
        signer,
        process: 'dynamic-balance',
        onSigned: () => {
          say(`${balance.number} is balanced; an inspector releases it.`);
          onClose();
        },
        summary: <Summary balance={balance} />,
      }}
    >
      <Summary balance={balance} />
      <TextField
        name="remarks"
        label="Remarks"
        hint="Torque and safetying of the weights, what else was seen"
        lines={3}
        value={remarks}
        onChange={setRemarks}
      />
    </FormThenSign>
  );
}

/** The approval for return to service, with the entry for the aircraft's log as it will stand. */
export function ReleaseBalance({ balance, signer, onClose }: Props) {
  return (
    <SignCommand
      op={fieldBalanceOperations.releaseFieldBalance}
      input={{ fieldBalanceId: balance.id }}
      version={balance.version}
      signer={signer}
      onClose={onClose}
      onSigned={() => {
        say(`${balance.number} is released; print its record for the aircraft’s log.`);
        onClose();
      }}
    >
      <Summary balance={balance} />
      <p>Entry for the aircraft’s log: {balance.balanced?.logEntry}</p>
    </SignCommand>
  );
}

export function AbandonBalance({ balance, onClose }: Omit<Props, 'signer'>) {
  const abandon = useCommand(fieldBalanceOperations.abandonFieldBalance);
  const [reason, setReason] = useState('');
  const send = () =>
    abandon.mutate(
      { input: { fieldBalanceId: balance.id, reason }, version: balance.version },
      {
        onSuccess: () => {
          say(`${balance.number} is abandoned.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Abandon ${balance.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={abandon.error}
        isPending={abandon.isPending}
        submit="Abandon it"
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
