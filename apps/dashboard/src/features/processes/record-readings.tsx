import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Equipment } from './equipment.ts';
import { CheckField, Later } from './ReadingFields.tsx';

type Value = Readonly<Record<string, string>>;
/** Results as they are read, none filled in; a tank’s one by one, a test system’s check of the day whole. */
export function RecordReadings({
  equipment,
  signer,
  onClose,
}: {
  equipment: Equipment;
  signer: Signer;
  onClose: () => void;
}) {
  const [values, setValues] = useState<Value>({});
  const [at, setAt] = useState<string>();
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  const isSystem = !equipment.kind.endsWith('-tank');
  const read = equipment.checks.flatMap(({ name }) => (values[name] ? [{ name, value: values[name] }] : []));
  if (isSigning) {
    const late = at ? { takenAt: new Date(at).toISOString(), ...(reason ? { lateReason: reason } : {}) } : {};
    return (
      <SignCommand
        op={equipmentOperations.recordReadings}
        input={{ equipmentId: equipment.id, values: read, ...late }}
        signer={signer}
        onClose={() => setSigning(false)}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={({ good, doubts }) => {
          const named = doubts === 0 ? '' : ` ${doubts} signed before it wait for an inspector.`;
          say(good ? `${equipment.code}: good.` : `${equipment.code} is shut until a good result.${named}`);
          onClose();
        }}
      >
        <p>
          {equipment.code} {equipment.title}
        </p>
        <p>{read.map(({ name, value }) => `${name}: ${value}`).join('; ')}</p>
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Results of ${equipment.code}`} isOpen onClose={onClose}>
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onCancel={onClose}
        onSubmit={() => read.length > 0 && setSigning(true)}
      >
        {equipment.checks.map((check, index) => (
          <CheckField
            key={check.name}
            check={check}
            isRequired={isSystem && check.due.by === 'day-of-use'}
            index={index}
            value={values[check.name] ?? ''}
            onChange={(value) => setValues({ ...values, [check.name]: value })}
          />
        ))}
        <Later
          at={at}
          reason={reason}
          onChange={(when, why) => {
            setAt(when);
            setReason(why);
          }}
        />
      </CommandForm>
    </Dialog>
  );
}
