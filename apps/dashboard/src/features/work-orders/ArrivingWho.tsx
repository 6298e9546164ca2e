import { customerOperations } from '@hubwright/contracts/customers/operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useCategories, useTitles } from '@hubwright/contracts/manuals/service-limits';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { DateField } from '../../ui/DateField.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { SearchBox } from '../../ui/SearchBox.tsx';
import { Select } from '../../ui/Select.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { type ArrivalDraft, partsOf } from './arrival-draft.ts';

export interface ArrivingProps {
  readonly draft: ArrivalDraft;
  readonly set: (changes: Partial<ArrivalDraft>) => void;
}

export const modelQuery = (modelId: string) => queryFor(manualOperations.showModel, { modelId });

/** Whose it is and on which aircraft it flies. */
export function OwnerFields({ draft, set }: ArrivingProps) {
  const customer = useQuery({
    ...queryFor(customerOperations.showCustomer, { customerId: draft.customer?.id ?? '' }),
    enabled: draft.customer !== null,
  }).data;
  return (
    <FieldGroup title="Whose it is">
      <SearchBox
        name="customerId"
        label="Customer"
        hint="Any piece of the name or code"
        picked={draft.customer}
        onPick={(thing) => set({ customer: thing, aircraftId: null })}
        search={(text) => queryFor(customerOperations.listCustomers, { search: text, limit: 20 })}
        found={({ rows }) => rows.map(({ id, name, code }) => ({ id, name, detail: code }))}
        isRequired
      />
      <Select
        name="aircraftId"
        label="Aircraft"
        placeholder={customer ? 'Not told' : 'Choose the customer first'}
        value={draft.aircraftId}
        onChange={(aircraftId) => set({ aircraftId })}
        choices={(customer?.aircraft ?? []).map((each) => ({
          value: each.id,
          text: `${each.registration}, ${each.airframe}`,
        }))}
      />
      {customer?.unpaidHold ? (
        <StateMark state="hold" word="has unpaid bills: ask the manager about a deposit" />
      ) : null}
    </FieldGroup>
  );
}

/** Which model it is and what it is approved for. Choosing the model lays out hub and blades below. */
export function ModelFields({ draft, set }: ArrivingProps) {
  const model = useQuery({ ...modelQuery(draft.model?.id ?? ''), enabled: draft.model !== null }).data;
  const listed = useQuery(queryFor(manualOperations.listModels, { limit: 200 })).data?.rows ?? [];
  return (
    <FieldGroup title="What it is">
      <SearchBox
        name="modelId"
        label="Model"
        hint="Designation as on the plate or decal"
        picked={draft.model}
        onPick={(thing) => {
          const row = listed.find((each) => each.id === thing?.id);
          set({ model: thing, applicationId: null, scope: null, parts: row ? partsOf(row) : [] });
        }}
        search={(text) => queryFor(manualOperations.listModels, { search: text, limit: 20 })}
        found={({ rows }) => rows.map(({ id, designation, maker }) => ({ id, name: designation, detail: maker }))}
        isRequired
      />
      <Select
        name="applicationId"
        label="Application"
        hint="Aircraft, engine and position decide angles and settings"
        placeholder={model ? 'Not told yet' : 'Choose the model first'}
        value={draft.applicationId}
        onChange={(applicationId) => set({ applicationId })}
        choices={(model?.applications ?? []).map((each) => ({
          value: each.id,
          text: `${each.airframe}, ${each.engine}, ${each.position}`,
        }))}
      />
      <Select
        name="use"
        label="Used for"
        hint="Untold, the manual’s strictest time counts"
        placeholder="Not told"
        value={draft.use}
        onChange={(use) => set({ use })}
        choices={useCategories.map((value) => ({ value, text: useTitles[value] }))}
      />
      <DateField name="madeOn" label="Made on" value={draft.madeOn} onChange={(madeOn) => set({ madeOn })} />
    </FieldGroup>
  );
}
