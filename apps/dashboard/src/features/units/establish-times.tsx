import { unitOperations } from '@hubwright/contracts/units/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { formatHours, formatWhole } from '../../format/numbers.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
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

/** The newest record counts whole: what it leaves out is unknown from then on, so what is on record stands beside the box. */
function onRecord({ times: [newest] }: Unit, name: keyof Draft): string {
  // Overhauls are counted on by releases: what is on record of them stays.
  if (name === 'sinceNewOverhauls') return 'Left empty, what is on record stays';
  const value = newest?.[name] ?? 'unknown';
  if (value === 'unknown') return 'Leave empty when unknown';
  const said = name === 'sinceNewCycles' ? formatWhole(value) : formatHours(value);
  return `On record: ${said}. Left empty, it is unknown from now on`;
}

/** Times read in a paper that turned up later, signed for; the record before stays. */
export function EstablishTimes({ item, signer, onClose }: { item: Unit; signer: Signer; onClose: () => void }) {
  const [draft, setDraft] = useState<Draft>({
    ...{ sinceNewTenths: '', sinceOverhaulTenths: '', sinceNewCycles: '', sinceNewOverhauls: '' },
  });
  const [basis, setBasis] = useState('');
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
            {label}: {draft[name] === '' ? 'unknown' : `${draft[name]} ${unit ?? ''}`}
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
            hint={onRecord(item, name)}
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
