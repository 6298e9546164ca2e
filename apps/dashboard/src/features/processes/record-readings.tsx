import type { Reply } from '@hubwright/contracts/operation';
import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { useState } from 'react';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
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
  const isSystem = !equipment.kind.endsWith('-tank');
  const read = equipment.checks.flatMap(({ name }) => (values[name] ? [{ name, value: values[name] }] : []));
  const late = at ? { takenAt: new Date(at).toISOString(), ...(reason ? { lateReason: reason } : {}) } : {};
  const signing = {
    op: equipmentOperations.recordReadings,
    input: { equipmentId: equipment.id, values: read, ...late },
    signer,
    onSigned: ({ good, doubts }: Reply<typeof equipmentOperations.recordReadings>) => {
      const named = doubts === 0 ? '' : ` ${doubts} signed before it wait for an inspector.`;
      say(good ? `${equipment.code}: good.` : `${equipment.code} is shut until a good result.${named}`);
      onClose();
    },
    summary: (
      <>
        <p>
          {equipment.code} {equipment.title}
        </p>
        <p>{read.map(({ name, value }) => `${name}: ${value}`).join('; ')}</p>
      </>
    ),
  };
  return (
    <FormThenSign
      title={`Results of ${equipment.code}`}
      onClose={onClose}
      signing={read.length > 0 ? signing : undefined}
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
    </FormThenSign>
  );
}
