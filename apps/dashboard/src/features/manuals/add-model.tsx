import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { carriers, emptyModel, kinds, type ModelDraft, materials, modelToSend, pitches } from './model-draft.ts';

/** What kind of unit it is: blades only where it is a propeller. */
function KindFields({ draft, set }: { draft: ModelDraft; set: (changes: Partial<ModelDraft>) => void }) {
  return (
    <div className="field-grid">
      <Select
        name="kind"
        label="Kind"
        value={draft.kind}
        onChange={(kind) => set({ kind })}
        choices={kinds}
        isRequired
      />
      {draft.kind === 'propeller' ? (
        <DecimalField
          name="bladeCount"
          label="Blades"
          decimals={0}
          value={draft.bladeCount}
          onChange={(bladeCount) => set({ bladeCount })}
          isRequired
        />
      ) : null}
      <Select
        name="material"
        label={draft.kind === 'propeller' ? 'Blades are of' : 'Body is of'}
        placeholder="Choose"
        value={draft.material}
        onChange={(material) => set({ material })}
        choices={materials}
        isRequired
      />
      <Select
        name="pitch"
        label="Pitch"
        placeholder="Choose"
        value={draft.pitch}
        onChange={(pitch) => set({ pitch })}
        choices={pitches}
        isRequired
      />
      <Select
        name="identityCarriedBy"
        label="The unit’s serial stands on"
        value={draft.identityCarriedBy}
        onChange={(identityCarriedBy) => set({ identityCarriedBy })}
        choices={carriers}
        isRequired
      />
    </div>
  );
}

/** A model the shop works on, and the manual it goes by. */
export function AddModel({ onClose, onAdded }: { onClose: () => void; onAdded: (modelId: string) => void }) {
  const add = useCommand(manualOperations.addModel);
  const [draft, setDraft] = useState(emptyModel);
  const [manual, setManual] = useState<Found | null>(null);
  const set = (changes: Partial<ModelDraft>) => setDraft({ ...draft, ...changes });
  const send = () =>
    add.mutate(
      { input: modelToSend(draft, manual?.id ?? '') },
      {
        onSuccess: ({ id }) => {
          say(`${draft.designation} is added.`);
          onAdded(id);
        },
      },
    );
  return (
    <Dialog title="Add a model" width="wide" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the model"
        onSubmit={send}
        onCancel={onClose}
      >
        <div className="field-grid">
          <TextField
            name="designation"
            label="Designation"
            hint="As on the plate"
            value={draft.designation}
            onChange={(designation) => set({ designation })}
            isCode
            isRequired
          />
          <TextField name="maker" label="Maker" value={draft.maker} onChange={(maker) => set({ maker })} isRequired />
        </div>
        <SearchBox
          name="manualId"
          label="Manual it goes by"
          picked={manual}
          onPick={setManual}
          search={(text) => queryFor(manualOperations.listManuals, { limit: 20, ...(text ? { search: text } : {}) })}
          found={({ rows }) => rows.map(({ id, number, title }) => ({ id, name: number, detail: title }))}
          isRequired
        />
        <KindFields draft={draft} set={set} />
      </CommandForm>
    </Dialog>
  );
}
