import type { Process } from '@hubwright/contracts/people/operations';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { processWords } from '../../format/process-words.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { EquipmentField } from './EquipmentField.tsx';
import { type ReadyPart, readyWords } from './loads.ts';

/** Which parts go into the tank together. Only parts that are ready for a step done in loads are offered. */
export function StartLoad({ ready, onClose }: { ready: readonly ReadyPart[]; onClose: () => void }) {
  const start = useCommand(loadOperations.startLoad);
  const offered = [...new Set(ready.map(({ process }) => process))];
  const [process, setProcess] = useState<Process | null>(offered.length === 1 ? (offered[0] ?? null) : null);
  const [equipment, setEquipment] = useState('');
  const [equipmentId, setEquipmentId] = useState<string | null>(null);
  const [stepIds, setStepIds] = useState<readonly string[]>([]);
  const chosen = ready.find(({ stepId }) => stepIds.includes(stepId));
  const kind = chosen?.equipmentKind;
  const tank = kind ? (equipmentId === null ? {} : { equipmentId }) : { equipment };
  const choose = (chosen: Process | null) => {
    setProcess(chosen);
    setStepIds([]);
  };
  return (
    <Dialog title="Put a load together" isOpen onClose={onClose}>
      <CommandForm
        problem={start.error}
        isPending={start.isPending}
        submit={`Start the load with ${countOf(stepIds.length, 'part')}`}
        onCancel={onClose}
        onSubmit={() =>
          start.mutate(
            { input: { process: process as Process, ...tank, stepIds: [...stepIds] } },
            {
              onSuccess: ({ number }) => {
                say(`${number} is started.`);
                onClose();
              },
            },
          )
        }
      >
        <Select
          name="process"
          label="Process"
          value={process}
          onChange={choose}
          choices={offered.map((value) => ({ value, text: processWords[value] }))}
          isRequired
        />
        <CheckboxList
          name="stepIds"
          label="Parts"
          value={stepIds}
          onChange={setStepIds}
          choices={ready
            .filter((part) => part.process === process)
            .map((part) => ({ value: part.stepId, text: readyWords(part) }))}
          isRequired
        />
        {kind ? (
          <EquipmentField kind={kind} value={equipmentId} onChange={setEquipmentId} />
        ) : (
          <TextField
            name="equipment"
            label="Tank, oven or cabinet"
            value={equipment}
            onChange={setEquipment}
            isRequired
          />
        )}
      </CommandForm>
    </Dialog>
  );
}
