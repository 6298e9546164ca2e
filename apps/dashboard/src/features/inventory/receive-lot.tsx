import { customerOperations } from '@hubwright/contracts/customers/operations';
import { inventoryOperations, sourceClasses, sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { Checkbox, RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { SearchBox, type Found as Thing } from '../../ui/SearchBox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { LabelFacts } from './LotLabel.tsx';
import { type Expecting, type Found, nothingFound, toSend } from './receive-draft.ts';

const sources = sourceClasses.map((value) => ({ value, text: sourceClassTitles[value] }));

export interface ReceiveFormProps {
  expecting: Expecting;
  onReceived: (lot: { id: string } & LabelFacts) => void;
  onCancel: () => void;
}

interface FieldsProps {
  expecting: Expecting;
  found: Found;
  set: (changes: Partial<Found>) => void;
}

/** The paper and marks that came with the parts. */
function PaperFields({ expecting, found, set }: FieldsProps) {
  return (
    <div className="field-grid">
      <DecimalField
        name="quantity"
        label="How many you counted"
        hint={expecting.line ? `${expecting.line.open} still to come on ${expecting.line.orderNumber}` : undefined}
        unit={expecting.issueUnit}
        decimals={0}
        value={found.quantity}
        onChange={(quantity) => set({ quantity })}
        isRequired
      />
      <TextField
        name="supplierLot"
        label="Supplier’s lot"
        hint="As printed on the bag or box"
        value={found.supplierLot}
        onChange={(supplierLot) => set({ supplierLot })}
        isCode
        isRequired
      />
      <TextField
        name="certificate"
        label="Certificate"
        hint={expecting.certificateRequired ? 'Needed before it can be accepted' : 'Not needed for this part'}
        value={found.certificate}
        onChange={(certificate) => set({ certificate })}
        isCode
      />
      {expecting.ages ? (
        <TextField
          name="cureDate"
          label="Cure date"
          hint="As on the package: 2Q26 or 2026-05-14"
          value={found.cureDate}
          onChange={(cureDate) => set({ cureDate })}
          isCode
          isRequired
        />
      ) : null}
      {expecting.serialised ? (
        <TextField
          name="serial"
          label="Serial"
          hint="One piece at a time, as on its plate"
          value={found.serial}
          onChange={(serial) => set({ serial })}
          isCode
          isRequired
        />
      ) : null}
    </div>
  );
}

/** Parts arrive: what was counted and what paper came. They wait in quarantine until someone authorised judges them. */
export function ReceiveForm({ expecting, onReceived, onCancel }: ReceiveFormProps) {
  const receive = useCommand(inventoryOperations.receiveLot);
  const [found, setFound] = useState(nothingFound);
  const [owner, setOwner] = useState<Thing | null>(null);
  const set = (changes: Partial<Found>) => setFound({ ...found, ...changes });
  const send = () =>
    receive.mutate(
      { input: toSend(expecting, found) },
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
      <RadioList
        name="sourceClass"
        label="Where the parts are from"
        value={found.sourceClass}
        onChange={(sourceClass) => set({ sourceClass, customerId: '' })}
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
