import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { DataFields } from './DataFields.tsx';
import { dataFrom, emptyData } from './data-draft.ts';

/** Places and limits of a model, typed from its document and signed. */
export function EnterData({ signer, onClose }: { signer: Signer; onClose: () => void }) {
  const [model, setModel] = useState<Found | null>(null);
  const [draft, setDraft] = useState(emptyData);
  return (
    <FormThenSign
      title="Places and limits"
      width="wide"
      onClose={onClose}
      signing={
        model
          ? {
              op: fieldBalanceOperations.enterFieldBalanceData,
              input: { modelId: model.id, ...dataFrom(draft) },
              signer,
              process: 'dynamic-balance',
              onSigned: () => {
                say(`${model.name} has its places and limits.`);
                onClose();
              },
              summary: (
                <p>
                  {model.name}: {draft.source}
                </p>
              ),
            }
          : undefined
      }
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
      <DataFields draft={draft} set={(changes) => setDraft({ ...draft, ...changes })} />
    </FormThenSign>
  );
}
