import type { Process } from '@hubwright/contracts/people/operations';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useMay } from '../../api/me.ts';
import { processChoices, processWords } from '../../format/process-words.ts';
import { Button } from '../../ui/Button.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { type Column, DataTable } from '../../ui/DataTable.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type TrainingItem, trainingItemsQuery } from './training.ts';

const columns: readonly Column<TrainingItem>[] = [
  { id: 'title', header: 'Training', value: (row) => row.title },
  {
    id: 'every',
    header: 'Comes again',
    value: (row) => (row.everyMonths ? `every ${row.everyMonths} months` : 'once is enough'),
  },
  { id: 'for', header: 'Needed for', value: (row) => row.processes.map((one) => processWords[one]).join(', ') },
  { id: 'state', header: 'Asked for', value: (row) => (row.active ? 'yes' : 'no more') },
];

function ItemForm({ item, onDone }: { item: TrainingItem | undefined; onDone: () => void }) {
  const add = useCommand(trainingOperations.addTrainingItem);
  const change = useCommand(trainingOperations.changeTrainingItem);
  const [title, setTitle] = useState(item?.title ?? '');
  const [months, setMonths] = useState(String(item?.everyMonths ?? ''));
  const [processes, setProcesses] = useState<readonly Process[]>(item?.processes ?? []);
  const [active, setActive] = useState(item?.active ?? true);
  const [reason, setReason] = useState('');
  const submit = () => {
    const fields = { title, everyMonths: months === '' ? null : Number(months), processes: [...processes] };
    if (item)
      change.mutate(
        { input: { itemId: item.id, ...fields, active, reason }, version: item.version },
        { onSuccess: onDone },
      );
    else add.mutate({ input: fields }, { onSuccess: onDone });
  };
  const toggle = (process: Process, isOn: boolean) =>
    setProcesses(isOn ? [...processes, process] : processes.filter((one) => one !== process));
  return (
    <CommandForm
      problem={item ? change.error : add.error}
      isPending={add.isPending || change.isPending}
      submit={item ? 'Change it' : 'Add it'}
      onSubmit={submit}
      onCancel={onDone}
    >
      <TextField name="title" label="Training" value={title} onChange={setTitle} isRequired />
      <TextField
        name="everyMonths"
        label="Comes again every"
        hint="Empty: once is enough"
        unit="months"
        inputMode="numeric"
        size={5}
        value={months}
        onChange={setMonths}
      />
      <FieldGroup title="Nobody does, inspects or approves these without it">
        {processChoices.map(({ value, text }) => (
          <Checkbox key={value} isSelected={processes.includes(value)} onChange={(isOn) => toggle(value, isOn)}>
            {text}
          </Checkbox>
        ))}
      </FieldGroup>
      {item ? (
        <>
          <Checkbox isSelected={active} onChange={setActive}>
            Asked for
          </Checkbox>
          <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
        </>
      ) : null}
    </CommandForm>
  );
}

/** The shop's list of trainings, and which authorisations need each. */
export function TrainingItems() {
  const { rows } = useSuspenseQuery(trainingItemsQuery).data;
  const mayChange = useMay(trainingOperations.changeTrainingItem);
  const [open, setOpen] = useState<'new' | TrainingItem>();
  const close = () => setOpen(undefined);
  return (
    <section className="sheet stack" aria-labelledby="items">
      <h2 id="items">Training an authorisation needs</h2>
      <DataTable
        caption="Trainings of the shop"
        rows={rows}
        columns={columns}
        rowKey={(row) => row.id}
        {...(mayChange ? { onOpen: setOpen } : {})}
        tools={mayChange ? <Button onPress={() => setOpen('new')}>Add a training</Button> : null}
        empty={<EmptyState title="No training is asked for">Authorisations are granted without one.</EmptyState>}
      />
      <Dialog
        title={open === 'new' ? 'Add a training' : 'Change a training'}
        width="wide"
        isOpen={open !== undefined}
        onClose={close}
      >
        {open ? <ItemForm item={open === 'new' ? undefined : open} onDone={close} /> : null}
      </Dialog>
    </section>
  );
}
