import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { AlternateField } from './AlternateField.tsx';
import { BuyingFields, IdentityFields, KeepingFields } from './PartFields.tsx';
import { emptyPart, type PartDraft, partToSend } from './part-draft.ts';

/** A new part number, with the parts that may stand in for it. */
export function AddPartDialog(props: {
  onClose: () => void;
  /** With how many that may stand in: since when each may, and whether both ways, is asked next. */
  onAdded: (partId: string, standIns: number) => void;
}) {
  const { onClose, onAdded } = props;
  const add = useCommand(partOperations.addPart);
  const [draft, setDraft] = useState(emptyPart);
  const set = (changes: Partial<PartDraft>) => setDraft({ ...draft, ...changes });
  const send = () =>
    add.mutate({ input: partToSend(draft) }, { onSuccess: ({ id }) => onAdded(id, draft.alternates.length) });
  return (
    <Dialog title="Add a part number" width="wide" isOpen onClose={onClose}>
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the part number"
        onSubmit={send}
        onCancel={onClose}
      >
        <IdentityFields draft={draft} set={set} />
        <KeepingFields draft={draft} set={set} />
        <BuyingFields draft={draft} set={set} />
        <FieldGroup title="Alternates">
          <AlternateField
            numbers={draft.alternates}
            onChange={(alternates) => set({ alternates })}
            except={draft.number}
          />
          {draft.alternates.length > 0 ? (
            <p className="soft small">
              Since when each may stand in, whether both ways, and whether only once the old part is used up: asked
              next.
            </p>
          ) : null}
        </FieldGroup>
      </CommandForm>
    </Dialog>
  );
}
