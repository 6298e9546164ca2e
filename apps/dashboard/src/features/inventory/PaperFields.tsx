import { issueUnit } from '@hubwright/contracts/inventory/part-operations';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import type { Expecting, Found } from './receive-draft.ts';

const issueUnits = issueUnit.options;

interface FieldsProps {
  expecting: Expecting;
  found: Found;
  set: (changes: Partial<Found>) => void;
}

/** The paper and marks that came with the parts. */
export function PaperFields({ expecting, found, set }: FieldsProps) {
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
      <Select
        name="unit"
        label="The paper counts by the"
        value={found.unit ?? expecting.issueUnit}
        onChange={(unit) => set({ unit })}
        choices={issueUnits.map((value) => ({ value, text: value }))}
        isRequired
      />
      <TextField
        name="deliveryNote"
        label="Delivery note"
        hint="Number on the paper in the box"
        value={found.deliveryNote}
        onChange={(deliveryNote) => set({ deliveryNote })}
        isCode
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
