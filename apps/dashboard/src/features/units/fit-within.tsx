import { type PartClass, partClasses } from '@hubwright/contracts/manuals/words';
import { assemblyOperations } from '@hubwright/contracts/units/assembly-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { tenthsOf, wholeOf } from './times-as-of.ts';
import { nameOf, type Unit } from './units.ts';

type Kind = Exclude<PartClass, 'assembly'>;
const kinds = partClasses
  .filter((kind): kind is Kind => kind !== 'assembly')
  .map((value) => ({ value, text: value.replaceAll('-', ' ') }));
const words = [
  ['position', 'Where it sits'],
  ['maker', 'Maker'],
  ['partNumber', 'Part number'],
  ['serial', 'Serial'],
] as const;
const figures = [
  ['sinceNewTenths', 'Hours since new', 'h', 1],
  ['sinceOverhaulTenths', 'Hours since overhaul', 'h', 1],
  ['sinceNewCycles', 'Cycles since new', 'cycles', 0],
] as const;

const empty = {
  ...{ position: '', maker: '', partNumber: '', serial: '', basis: '' },
  ...{ sinceNewTenths: '', sinceOverhaulTenths: '', sinceNewCycles: '' },
};

/** A part with a serial of its own that sits in another part, and flies where that one flies. */
export function FitWithin({ parent, today, onClose }: { parent: Unit; today: string; onClose: () => void }) {
  const fit = useCommand(assemblyOperations.fitWithin);
  const [kind, setKind] = useState<Kind | null>(null);
  const [from, setFrom] = useState(today);
  const [draft, setDraft] = useState({ ...empty, maker: parent.maker });
  const set = (name: keyof typeof draft) => (text: string) => setDraft({ ...draft, [name]: text });
  const send = () => {
    if (!kind) return;
    const { sinceNewTenths, sinceOverhaulTenths, sinceNewCycles, ...said } = draft;
    const times = {
      ...{ sinceNewTenths: tenthsOf(sinceNewTenths), sinceOverhaulTenths: tenthsOf(sinceOverhaulTenths) },
      sinceNewCycles: wholeOf(sinceNewCycles),
    };
    const done = () => {
      say(`${draft.partNumber} ${draft.serial} sits in ${nameOf(parent)} on record.`);
      onClose();
    };
    fit.mutate({ input: { parentId: parent.id, kind, from, ...said, ...times } }, { onSuccess: done });
  };
  return (
    <Dialog title={`A part of ${parent.partNumber} ${nameOf(parent)}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={fit.error}
        isPending={fit.isPending}
        submit="Record the part"
        onSubmit={send}
        onCancel={onClose}
      >
        <Select name="kind" label="What it is" value={kind} onChange={setKind} choices={kinds} isRequired />
        {words.map(([name, label]) => (
          <TextField key={name} name={name} label={label} value={draft[name]} onChange={set(name)} isRequired />
        ))}
        <DateField name="from" label="Fitted on" value={from} onChange={setFrom} isRequired />
        {figures.map(([name, label, unit, decimals]) => (
          <DecimalField
            key={name}
            {...{ name, label, unit, decimals }}
            hint="On that day, by its papers; leave empty when unknown, or when it is on record already"
            value={draft[name]}
            onChange={set(name)}
          />
        ))}
        <TextField name="basis" label="Where it was seen" value={draft.basis} onChange={set('basis')} isRequired />
      </CommandForm>
    </Dialog>
  );
}

/** Out of the part it sat in; what it flew there stays its own. */
export function TakeOutOf({ part, today, onClose }: { part: Unit; today: string; onClose: () => void }) {
  const take = useCommand(assemblyOperations.takeOutOf);
  const [on, setOn] = useState(today);
  const [basis, setBasis] = useState('');
  const done = () => {
    say(`${part.partNumber} ${nameOf(part)} sits in nothing on record.`);
    onClose();
  };
  return (
    <Dialog title={`Take out ${part.partNumber} ${nameOf(part)}`} isOpen onClose={onClose}>
      <CommandForm
        problem={take.error}
        isPending={take.isPending}
        submit="Record that it is out"
        onSubmit={() => take.mutate({ input: { itemId: part.id, on, basis } }, { onSuccess: done })}
        onCancel={onClose}
      >
        <DateField name="on" label="Taken out on" value={on} onChange={setOn} isRequired />
        <TextField name="basis" label="Where it was seen" value={basis} onChange={setBasis} isRequired />
      </CommandForm>
    </Dialog>
  );
}
