import type { Process } from '@hubwright/contracts/people/operations';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { processChoices, processWords } from '../../format/process-words.ts';
import { useToday } from '../../format/use-today.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { isInForce, peopleQuery } from './list-people.ts';
import { inspectionListsQuery } from './training.ts';

function ListForm({ onDone }: { onDone: () => void }) {
  const { rows: lists } = useSuspenseQuery(inspectionListsQuery).data;
  const { rows: people } = useSuspenseQuery(peopleQuery).data;
  const set = useCommand(trainingOperations.setInspectionList);
  const today = useToday();
  const [process, setProcess] = useState<Process | null>(null);
  const [named, setNamed] = useState<readonly string[]>([]);
  const [reason, setReason] = useState('');
  const choose = (chosen: Process) => {
    setProcess(chosen);
    setNamed(lists.find((list) => list.process === chosen)?.people.map(({ id }) => id) ?? []);
  };
  const able = people.filter(
    ({ active, authorisations }) =>
      active &&
      authorisations.some((held) => held.process === process && held.level === 'inspect' && isInForce(held, today)),
  );
  const submit = () =>
    set.mutate({ input: { process: process as Process, personIds: [...named], reason } }, { onSuccess: onDone });
  return (
    <CommandForm problem={set.error} isPending={set.isPending} submit="Name them" onSubmit={submit} onCancel={onDone}>
      <Select name="process" label="Process" value={process} onChange={choose} choices={processChoices} isRequired />
      <FieldGroup title="May inspect it (nobody named: everyone authorised)">
        {able.map(({ id, displayName }) => (
          <Checkbox
            key={id}
            isSelected={named.includes(id)}
            onChange={(isOn) => setNamed(isOn ? [...named, id] : named.filter((one) => one !== id))}
          >
            {displayName}
          </Checkbox>
        ))}
        {process && able.length === 0 ? <p className="soft">Nobody is authorised to inspect it.</p> : null}
      </FieldGroup>
      <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
    </CommandForm>
  );
}

/** Who may inspect whose work: nobody their own, and of some processes only those named here. */
export function InspectionLists() {
  const { rows } = useSuspenseQuery(inspectionListsQuery).data;
  const maySet = useMay(trainingOperations.setInspectionList);
  const [isOpen, setOpen] = useState(false);
  const named = rows.filter(({ people }) => people.length > 0);
  return (
    <section className="sheet stack" aria-labelledby="inspectors">
      <h2 id="inspectors">Who may inspect</h2>
      <p>
        Nobody inspects work they did or supervised, unless the shop profile allows it for the process. Whoever is
        authorised to inspect may, except where names stand here.
      </p>
      <ul className="lines">
        {named.map(({ process, people }) => (
          <li key={process}>
            <div>
              <strong>{processWords[process]}</strong> only {people.map(({ displayName }) => displayName).join(', ')}
            </div>
          </li>
        ))}
      </ul>
      {maySet ? (
        <div className="row">
          <Button onPress={() => setOpen(true)}>Name inspectors of a process</Button>
        </div>
      ) : null}
      <Dialog title="Who may inspect" isOpen={isOpen} onClose={() => setOpen(false)}>
        {isOpen ? <ListForm onDone={() => setOpen(false)} /> : null}
      </Dialog>
    </section>
  );
}
