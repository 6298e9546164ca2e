import { type EquipmentKind, equipmentKinds } from '@hubwright/contracts/manuals/words';
import type { Process } from '@hubwright/contracts/people/operations';
import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { processWords } from '../../format/process-words.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { CheckLines } from './CheckLines.tsx';
import { checkInput, draftOf, emptyCheck } from './check-draft.ts';
import { type Equipment, kindWords } from './equipment.ts';

const done: readonly Process[] = ['cleaning', 'coating', 'plating', 'non-destructive-test', 'blade-repair'];
const processChoices = done.map((value) => ({ value, text: processWords[value] }));
const kindChoices = equipmentKinds.map((value) => ({ value, text: kindWords[value] }));

/** A tank or test system with what is checked on it. */
export function AddEquipment({ onClose }: { onClose: () => void }) {
  const add = useCommand(equipmentOperations.addEquipment);
  const [code, setCode] = useState('');
  const [title, setTitle] = useState('');
  const [kind, setKind] = useState<EquipmentKind | null>(null);
  const [process, setProcess] = useState<Process | null>(null);
  const [drafts, setDrafts] = useState([emptyCheck(1)]);
  return (
    <Dialog title="Put a tank or test system on record" isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Put it on record"
        onCancel={onClose}
        onSubmit={() => {
          if (kind === null || process === null) return;
          const input = { code, title, kind, process, checks: drafts.map(checkInput) };
          add.mutate({ input }, { onSuccess: onClose });
        }}
      >
        <TextField name="code" label="Code" isCode value={code} onChange={setCode} isRequired />
        <TextField name="title" label="What it is" value={title} onChange={setTitle} isRequired />
        <Select name="kind" label="Kind" value={kind} onChange={setKind} choices={kindChoices} isRequired />
        <Select
          name="process"
          label="Who is authorised for it: process"
          value={process}
          onChange={setProcess}
          choices={processChoices}
          isRequired
        />
        <CheckLines drafts={drafts} onChange={setDrafts} />
      </CommandForm>
    </Dialog>
  );
}

/** Results keep the limits they were judged by; new ones are judged by these. */
export function ChangeEquipment({ equipment, onClose }: { equipment: Equipment; onClose: () => void }) {
  const change = useCommand(equipmentOperations.changeEquipment);
  const [title, setTitle] = useState(equipment.title);
  const [inService, setInService] = useState(equipment.inService);
  const [drafts, setDrafts] = useState(equipment.checks.map((check, index) => draftOf(check, index + 1)));
  const [reason, setReason] = useState('');
  const { id: equipmentId, process, version } = equipment;
  return (
    <Dialog title={`Change ${equipment.code}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Change it"
        onCancel={onClose}
        onSubmit={() =>
          change.mutate(
            { input: { equipmentId, title, process, inService, reason, checks: drafts.map(checkInput) }, version },
            {
              onSuccess: () => {
                say(`${equipment.code} is changed.`);
                onClose();
              },
            },
          )
        }
      >
        <TextField name="title" label="What it is" value={title} onChange={setTitle} isRequired />
        <Checkbox isSelected={inService} onChange={setInService}>
          In service
        </Checkbox>
        <CheckLines drafts={drafts} onChange={setDrafts} />
        <TextField name="reason" label="Why it is changed" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
