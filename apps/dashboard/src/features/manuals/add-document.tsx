import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import type { DocumentKind } from '@hubwright/contracts/manuals/words';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { kindChoices } from './documents.ts';
import { IssueFields } from './issue-fields.tsx';
import { ModelField, type NamedModel } from './model-field.tsx';

/** A paper the shop holds, with the issue it holds. */
export function AddDocument({ onClose, onAdded }: { onClose: () => void; onAdded: (documentId: string) => void }) {
  const add = useCommand(documentOperations.addDocument);
  const [kind, setKind] = useState<DocumentKind>('service-letter');
  const [models, setModels] = useState<NamedModel[]>([]);
  const [draft, setDraft] = useState({
    ...{ number: '', title: '', issuer: '', issue: '', summary: '' },
    issuedOn: useToday(),
  });
  const set = (changes: Partial<typeof draft>) => setDraft({ ...draft, ...changes });
  const send = () =>
    add.mutate(
      { input: { ...draft, kind, modelIds: models.map(({ id }) => id) } },
      {
        onSuccess: ({ id }) => {
          say(`${draft.number} is added; open work on its models waits until an inspector takes it over.`);
          onAdded(id);
        },
      },
    );
  return (
    <Dialog title="Add a document" isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={add.error}
        isPending={add.isPending}
        submit="Add the document"
        onSubmit={send}
        onCancel={onClose}
      >
        <div className="field-grid">
          <Select name="kind" label="What it is" value={kind} onChange={setKind} choices={kindChoices} isRequired />
          <TextField
            name="number"
            label="Number"
            hint="As printed on it"
            value={draft.number}
            onChange={(number) => set({ number })}
            isCode
            isRequired
          />
          <TextField name="title" label="Title" value={draft.title} onChange={(title) => set({ title })} isRequired />
          <TextField
            name="issuer"
            label="Issued by"
            value={draft.issuer}
            onChange={(issuer) => set({ issuer })}
            isRequired
          />
        </div>
        <ModelField models={models} onChange={setModels} />
        <IssueFields draft={draft} set={set} />
      </CommandForm>
    </Dialog>
  );
}
