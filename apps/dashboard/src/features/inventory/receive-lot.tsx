import { customerOperations } from '@hubwright/contracts/customers/operations';
import { inventoryOperations, sourceClasses, sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { Checkbox, RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { SearchBox, type Found as Thing } from '../../ui/SearchBox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { ChecklistFields } from './ChecklistFields.tsx';
import { checklistQuery } from './checklists.ts';
import type { LabelFacts } from './LotLabel.tsx';
import type { Part } from './lots.ts';
import { PaperFields } from './PaperFields.tsx';
import { answered, type Expecting, type Found, nothingFound, toSend } from './receive-draft.ts';
import { SenderField } from './SenderField.tsx';

const sources = sourceClasses.map((value) => ({ value, text: sourceClassTitles[value] }));

export interface ReceiveFormProps {
  expecting: Expecting;
  partClass: Part['class'];
  onReceived: (lot: { id: string } & LabelFacts) => void;
  onCancel: () => void;
}

/** Parts arrive: what was counted and what paper came. They wait in quarantine until someone authorised judges them. */
export function ReceiveForm({ expecting, partClass, onReceived, onCancel }: ReceiveFormProps) {
  const receive = useCommand(inventoryOperations.receiveLot);
  const checklist = useQuery(checklistQuery(partClass)).data?.rows[0];
  const [found, setFound] = useState(nothingFound);
  const [owner, setOwner] = useState<Thing | null>(null);
  const set = (changes: Partial<Found>) => setFound({ ...found, ...changes });
  const send = () =>
    receive.mutate(
      { input: toSend({ ...expecting, checklist }, found) },
      {
        onSuccess: ({ id, code, expiresOn }) =>
          onReceived({
            id,
            code,
            expiresOn,
            partNumber: expecting.number,
            description: expecting.description,
            issueUnit: expecting.issueUnit,
            quantity: Number(found.quantity),
            supplierLot: found.supplierLot,
            certificate: found.certificate,
          }),
      },
    );
  return (
    <CommandForm
      problem={receive.error}
      isPending={receive.isPending}
      submit="Receive into quarantine"
      onSubmit={send}
      onCancel={onCancel}
    >
      <PaperFields expecting={expecting} found={found} set={set} />
      {expecting.line || found.sourceClass === 'customer-supplied' ? null : (
        <SenderField value={found.supplierId} onChange={(supplierId) => set({ supplierId })} />
      )}
      <RadioList
        name="sourceClass"
        label="Where the parts are from"
        value={found.sourceClass}
        onChange={(sourceClass) => set({ sourceClass, customerId: '', supplierId: null })}
        choices={sources}
        isRequired
      />
      {found.sourceClass === 'customer-supplied' ? (
        <SearchBox
          name="customerId"
          label="Whose parts they are"
          picked={owner}
          onPick={(thing) => {
            setOwner(thing);
            set({ customerId: thing?.id ?? '' });
          }}
          search={(text) => queryFor(customerOperations.listCustomers, { search: text, limit: 20 })}
          found={({ rows }) => rows.map(({ id, name, code }) => ({ id, name, detail: code }))}
          isRequired
        />
      ) : null}
      {checklist ? (
        <ChecklistFields
          checklist={checklist}
          answers={found.answers}
          onAnswer={(item, changes) => set({ answers: answered(found.answers, item, changes) })}
        />
      ) : null}
      <TextField
        name="damage"
        label="Damage"
        hint="What you see on box or parts; leave empty when there is none"
        lines={2}
        value={found.damage}
        onChange={(damage) => set({ damage })}
      />
      {receive.error?.type === 'over-delivery' ? (
        <Checkbox isSelected={found.takeSurplus} onChange={(takeSurplus) => set({ takeSurplus })}>
          I counted again and take the surplus
        </Checkbox>
      ) : null}
    </CommandForm>
  );
}
