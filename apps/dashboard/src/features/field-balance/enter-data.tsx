import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type DataDraft, dataFrom, emptyData } from './data-draft.ts';

const numbers = [
  ['radius', 'Radius of the places', 3],
  ['mostPerPlace', 'Most in one place, g', 2],
  ['mostInAll', 'Most in all, g', 2],
  ['mostPieces', 'Most pieces in one place', 0],
  ['mostPlaces', 'Most places used', 0],
  ['scatter', 'Readings repeat within', 3],
  ['mostWind', 'Most wind, kt', 1],
] as const;
const ways = [
  { value: 'clockwise', text: 'Clockwise' },
  { value: 'counterclockwise', text: 'Counterclockwise' },
] as const;
const radiusUnits = [
  { value: 'in', text: 'in' },
  { value: 'mm', text: 'mm' },
] as const;

function Fields({ draft, set }: { draft: DataDraft; set: (changes: Partial<DataDraft>) => void }) {
  return (
    <>
      <TextField
        name="source"
        label="Document with its revision"
        value={draft.source}
        onChange={(source) => set({ source })}
        isRequired
      />
      <FieldGroup title="Limits">
        {numbers.map(([name, label, decimals]) => (
          <DecimalField
            key={name}
            name={name}
            label={label}
            decimals={decimals}
            value={draft[name]}
            onChange={(text) => set({ [name]: text })}
            isRequired
          />
        ))}
        <Select
          name="radiusUnit"
          label="Unit of the radius"
          value={draft.radiusUnit}
          onChange={(radiusUnit) => set({ radiusUnit })}
          choices={radiusUnits}
          isRequired
        />
        <Select
          name="counting"
          label="Angles count"
          hint="From blade 1, seen from the front"
          value={draft.counting}
          onChange={(counting) => set({ counting })}
          choices={ways}
          isRequired
        />
        <TextField
          name="unit"
          label="Unit of vibration"
          hint="As the document and the instrument have it, such as ips peak"
          value={draft.unit}
          onChange={(unit) => set({ unit })}
          isRequired
        />
      </FieldGroup>
      <TextField
        name="places"
        label="Places"
        hint="A line each: name, angle in degrees"
        lines={6}
        value={draft.places}
        onChange={(places) => set({ places })}
        isRequired
      />
      <TextField
        name="ranges"
        label="Speed ranges"
        hint="A line each: from rpm, to rpm, limit, target"
        lines={3}
        value={draft.ranges}
        onChange={(ranges) => set({ ranges })}
        isRequired
      />
    </>
  );
}

/** Places and limits of a model, typed from its document and signed. */
export function EnterData({ signer, onClose }: { signer: Signer; onClose: () => void }) {
  const [model, setModel] = useState<Found | null>(null);
  const [draft, setDraft] = useState(emptyData);
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  if (isSigning && model)
    return (
      <SignCommand
        op={fieldBalanceOperations.enterFieldBalanceData}
        input={{ modelId: model.id, ...dataFrom(draft) }}
        signer={signer}
        process="dynamic-balance"
        onClose={() => setSigning(false)}
        onWrongInput={(wrong) => {
          setProblem(wrong);
          setSigning(false);
        }}
        onSigned={() => {
          say(`${model.name} has its places and limits.`);
          onClose();
        }}
      >
        <p>
          {model.name}: {draft.source}
        </p>
      </SignCommand>
    );
  return (
    <Dialog title="Places and limits" isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(model !== null)}
        onCancel={onClose}
      >
        <SearchBox
          name="modelId"
          label="Model"
          picked={model}
          onPick={setModel}
          search={(text) => queryFor(manualOperations.listModels, { search: text, limit: 20 })}
          found={({ rows }) => rows.map(({ id, designation, maker }) => ({ id, name: designation, detail: maker }))}
          isRequired
        />
        <Fields draft={draft} set={(changes) => setDraft({ ...draft, ...changes })} />
      </CommandForm>
    </Dialog>
  );
}
