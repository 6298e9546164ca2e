import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import { DataFields } from './DataFields.tsx';
import { dataFrom, emptyData } from './data-draft.ts';

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
        <DataFields draft={draft} set={(changes) => setDraft({ ...draft, ...changes })} />
      </CommandForm>
    </Dialog>
  );
}
