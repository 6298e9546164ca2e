import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkDocument } from './documents.ts';
import { ModelField, type NamedModel } from './model-field.tsx';

export function DocumentModels({ document, onClose }: { document: WorkDocument; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(document);
  const change = useCommand(documentOperations.setDocumentModels);
  const [models, setModels] = useState<NamedModel[]>(() => [...document.models]);
  const send = () =>
    change.mutate(
      { input: { documentId: document.id, modelIds: models.map(({ id }) => id) }, version: seen.version },
      {
        onSuccess: () => {
          say(`The models of ${document.number} are changed.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Which models does ${document.number} belong to?`} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Keep these models"
        onSubmit={send}
        onCancel={onClose}
      >
        <ModelField models={models} onChange={setModels} />
      </CommandForm>
    </Dialog>
  );
}
