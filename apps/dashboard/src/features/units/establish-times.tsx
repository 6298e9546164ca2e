import { unitOperations } from '@hubwright/contracts/units/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { formatHours, formatWhole } from '../../format/numbers.ts';
import { useToday } from '../../format/use-today.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type ItemTimes, timesQuery } from './times-as-of.ts';
import { nameOf, type Unit } from './units.ts';

const fields = [
  { name: 'sinceNewTenths', label: 'Hours since new', unit: 'h', decimals: 1 },
  { name: 'sinceOverhaulTenths', label: 'Hours since overhaul', unit: 'h', decimals: 1 },
  { name: 'sinceNewCycles', label: 'Cycles since new', unit: undefined, decimals: 0 },
  { name: 'sinceNewOverhauls', label: 'Overhauls since new', unit: undefined, decimals: 0 },
] as const;
type Draft = Record<(typeof fields)[number]['name'], string>;

/** What is left empty is unknown, never zero. */
function whole(text: string, decimals: number): number | 'unknown' {
  return text === '' ? 'unknown' : Math.round(Number(text) * 10 ** decimals);
}

/** What is on record by now, flying since the last paper included, stands beside the box; a paper that leaves it out changes nothing of it. */
function onRecord(now: ItemTimes | undefined, name: keyof Draft): string {
  if (name === 'sinceNewOverhauls') return 'Left empty, what is on record stays';
  const [value, atLeast] = told(now, name);
  if (value !== 'unknown') return `On record today: ${textOf(name, value)}. Left empty, that stays`;
  return atLeast > 0 ? `Unknown, at least ${textOf(name, atLeast)}` : 'Leave empty when unknown';
}

function told(now: ItemTimes | undefined, name: keyof Draft): [number | 'unknown', number] {
  if (name === 'sinceNewCycles') return [now?.cyclesSinceNew.cycles ?? 'unknown', now?.cyclesSinceNew.atLeast ?? 0];
  const total = name === 'sinceNewTenths' ? now?.sinceNew : now?.sinceOverhaul;
  return [total?.tenths ?? 'unknown', total?.atLeastTenths ?? 0];
}

const textOf = (name: keyof Draft, value: number) =>
  name === 'sinceNewCycles' ? formatWhole(value) : `${formatHours(value)} h`;

/** Times read in a paper that turned up later, signed for; the record before stays. */
export function EstablishTimes({ item, signer, onClose }: { item: Unit; signer: Signer; onClose: () => void }) {
  const [draft, setDraft] = useState<Draft>({
    ...{ sinceNewTenths: '', sinceOverhaulTenths: '', sinceNewCycles: '', sinceNewOverhauls: '' },
  });
  const [basis, setBasis] = useState('');
  const today = useToday();
  const now = useQuery(timesQuery(item.id, today)).data;
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  if (isSigning) {
    const input = {
      itemId: item.id,
      basis,
      sinceNewTenths: whole(draft.sinceNewTenths, 1),
      sinceOverhaulTenths: whole(draft.sinceOverhaulTenths, 1),
      sinceNewCycles: whole(draft.sinceNewCycles, 0),
      sinceNewOverhauls: whole(draft.sinceNewOverhauls, 0),
    };
    return (
      <SignCommand
        op={unitOperations.establishTimes}
        input={input}
        version={item.version}
        signer={signer}
        onClose={onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={() => {
          say(`The times of ${item.partNumber} ${nameOf(item)} are on record.`);
          onClose();
        }}
      >
        <p>
          {item.partNumber} {nameOf(item)}, by {basis}
        </p>
        {fields.map(({ name, label, unit }) => (
          <p key={name} className="small">
            {label}: {draft[name] === '' ? 'not in this paper' : `${draft[name]} ${unit ?? ''}`}
          </p>
        ))}
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Times of ${item.partNumber} ${nameOf(item)}`} isOpen onClose={onClose}>
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={onClose}
      >
        <TextField name="basis" label="Which paper says so" value={basis} onChange={setBasis} isRequired />
        {fields.map(({ name, label, unit, decimals }) => (
          <DecimalField
            key={name}
            name={name}
            label={label}
            hint={onRecord(now, name)}
            {...(unit ? { unit } : {})}
            decimals={decimals}
            value={draft[name]}
            onChange={(text) => setDraft({ ...draft, [name]: text })}
          />
        ))}
      </CommandForm>
    </Dialog>
  );
}
