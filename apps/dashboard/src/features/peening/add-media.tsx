import type { Sent } from '@hubwright/contracts/operation';
import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type Machine, sievesFrom } from './peening.ts';

const labels = [
  ['code', 'Our code', 'As it is written on the drum'],
  ['size', 'Size', 'As the process specification names it'],
  ['supplier', 'Supplier', undefined],
  ['supplierLot', 'Supplier’s lot', undefined],
  ['certificate', 'Certificate', 'Its number'],
] as const;
const words = { code: '', size: '', supplier: '', supplierLot: '', certificate: '' };
const noChecks = { sieves: '', mostBroken: '', field: '', everyDays: '', everyHours: '' };

function mediaInput(machineId: string, named: typeof words, checks: typeof noChecks) {
  const { sieves, mostBroken, field, everyDays, everyHours } = checks;
  const limits = { sieves: sievesFrom(sieves) ?? [], mostBroken: Number(mostBroken || Number.NaN), field };
  const due = { everyDays: Number(everyDays || Number.NaN), ...(everyHours ? { everyHours } : {}) };
  return { machineId, ...named, limits, ...due } as Sent<typeof mediaOperations.addPeeningMedia>;
}

/** A media lot as it goes into a machine: where it is from, and what its checks are judged by. */
export function AddMedia({ machines, onClose }: { machines: readonly Machine[]; onClose: () => void }) {
  const [machineId, setMachine] = useState<string | null>(null);
  const [named, setNamed] = useState(words);
  const [checks, setChecks] = useState(noChecks);
  const command = useCommand(mediaOperations.addPeeningMedia);
  const put = (changes: Partial<typeof noChecks>) => setChecks({ ...checks, ...changes });
  return (
    <Dialog title="Put media in" isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={command.error}
        isPending={command.isPending}
        submit="Put it on record"
        onCancel={onClose}
        onSubmit={() =>
          machineId &&
          command.mutate(
            { input: mediaInput(machineId, named, checks) },
            {
              onSuccess: () => {
                say(`${named.code} is on record. It is checked before the first lot.`);
                onClose();
              },
            },
          )
        }
      >
        <FieldGroup title="Media">
          <Select
            name="machineId"
            label="Machine"
            value={machineId}
            onChange={setMachine}
            choices={machines.map(({ id, code, title }) => ({ value: id, text: `${code} ${title}` }))}
            isRequired
          />
          {labels.map(([name, label, hint]) => (
            <TextField
              key={name}
              name={name}
              label={label}
              hint={hint}
              value={named[name]}
              onChange={(text) => setNamed({ ...named, [name]: text })}
              isCode
              isRequired
            />
          ))}
        </FieldGroup>
        <TextField
          name="limits/sieves"
          label="Sieves"
          hint="A line each: name, least %, most %; leave one empty where there is none"
          lines={4}
          value={checks.sieves}
          onChange={(sieves) => put({ sieves })}
          isRequired
        />
        <FieldGroup title="Under the glass, and how often">
          <DecimalField
            name="limits/mostBroken"
            label="Broken or deformed at most"
            decimals={0}
            value={checks.mostBroken}
            onChange={(mostBroken) => put({ mostBroken })}
            isRequired
          />
          <TextField
            name="limits/field"
            label="In a field of"
            value={checks.field}
            onChange={(field) => put({ field })}
            isRequired
          />
          <DecimalField
            name="everyDays"
            label="A check holds"
            unit="days"
            decimals={0}
            value={checks.everyDays}
            onChange={(everyDays) => put({ everyDays })}
            isRequired
          />
          <DecimalField
            name="everyHours"
            label="At most"
            hint="By the machine’s counter"
            unit="h"
            decimals={1}
            value={checks.everyHours}
            onChange={(everyHours) => put({ everyHours })}
          />
        </FieldGroup>
      </CommandForm>
    </Dialog>
  );
}
