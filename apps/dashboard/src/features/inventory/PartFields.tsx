import { supplierOperations } from '@hubwright/contracts/purchasing/supplier-operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { BinField } from './lot-form.tsx';
import type { PartDraft } from './part-draft.ts';
import { classWords } from './stock-words.ts';

type Changes = { draft: PartDraft; set: (changes: Partial<PartDraft>) => void };

const classes = Object.entries(classWords).map(([value, text]) => ({ value: value as keyof typeof classWords, text }));
const issueUnits = ['piece', 'inch', 'gram', 'millilitre', 'sheet'] as const;

/** What the part is. */
export function IdentityFields({ draft, set }: Changes) {
  return (
    <FieldGroup title="The part">
      <TextField
        name="number"
        label="Part number"
        value={draft.number}
        onChange={(number) => set({ number })}
        isCode
        isRequired
      />
      <TextField name="maker" label="Maker" value={draft.maker} onChange={(maker) => set({ maker })} isRequired />
      <TextField
        name="description"
        label="Description"
        value={draft.description}
        onChange={(description) => set({ description })}
        isRequired
      />
      <Select
        name="class"
        label="Class"
        placeholder="Choose a class"
        value={draft.class}
        onChange={(value) => set({ class: value })}
        choices={classes}
        isRequired
      />
    </FieldGroup>
  );
}

/** How it is counted, kept and aged. */
export function KeepingFields({ draft, set }: Changes) {
  return (
    <FieldGroup title="Keeping it" note="Quantities everywhere are whole numbers of the unit it is issued in.">
      <Select
        name="issueUnit"
        label="Issued by the"
        value={draft.issueUnit}
        onChange={(issueUnit) => set({ issueUnit })}
        choices={issueUnits.map((value) => ({ value, text: value }))}
        isRequired
      />
      <BinField name="homeBin" label="Home bin" value={draft.homeBin} onChange={(homeBin) => set({ homeBin })} />
      <DecimalField
        name="shelfLifeMonths"
        label="Shelf life from cure"
        hint="Empty: it does not age"
        unit="months"
        decimals={0}
        value={draft.shelfLifeMonths}
        onChange={(shelfLifeMonths) => set({ shelfLifeMonths })}
      />
      <DecimalField
        name="minimumDaysAtBuild"
        label="Must be left at build"
        unit="days"
        decimals={0}
        value={draft.minimumDaysAtBuild}
        onChange={(minimumDaysAtBuild) => set({ minimumDaysAtBuild })}
        isRequired
      />
      <Checkbox isSelected={draft.certificateRequired} onChange={(certificateRequired) => set({ certificateRequired })}>
        Comes with a certificate
      </Checkbox>
      <Checkbox isSelected={draft.serialised} onChange={(serialised) => set({ serialised })}>
        Each piece has a serial
      </Checkbox>
    </FieldGroup>
  );
}

/** How it is bought. */
export function BuyingFields({ draft, set }: Changes) {
  const suppliers = useQuery(queryFor(supplierOperations.listSuppliers, { limit: 200 })).data?.rows ?? [];
  return (
    <FieldGroup title="Buying it">
      <Select
        name="supplierId"
        label="Supplier"
        placeholder="None yet"
        value={draft.supplierId}
        onChange={(supplierId) => set({ supplierId })}
        choices={suppliers.map((each) => ({ value: each.id, text: each.name }))}
      />
      <DecimalField
        name="leadTimeDays"
        label="Lead time"
        unit="days"
        decimals={0}
        value={draft.leadTimeDays}
        onChange={(leadTimeDays) => set({ leadTimeDays })}
        isRequired
      />
      <DecimalField
        name="unitPrice"
        label="Price of one"
        value={draft.unitPrice}
        onChange={(unitPrice) => set({ unitPrice })}
        isRequired
      />
      <DecimalField
        name="packSize"
        label="Bought in packs of"
        decimals={0}
        value={draft.packSize}
        onChange={(packSize) => set({ packSize })}
        isRequired
      />
    </FieldGroup>
  );
}
