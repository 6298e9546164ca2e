import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useToday } from '../../format/use-today.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkDocument } from './documents.ts';
import { type IssueDraft, IssueFields } from './issue-fields.tsx';

/** A newer issue came: from then on work goes by it. */
export function IssueDocument({ document, onClose }: { document: WorkDocument; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(document);
  const issue = useCommand(documentOperations.issueDocument);
  const [draft, setDraft] = useState<IssueDraft>({ issue: '', issuedOn: useToday(), summary: '' });
  const send = () =>
    issue.mutate(
      { input: { documentId: document.id, ...draft }, version: seen.version },
      {
        onSuccess: () => {
          say(`${document.number} ${draft.issue} is current; open work waits until an inspector takes it over.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Newer issue of ${document.number}`} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={issue.error}
        isPending={issue.isPending}
        submit="Enter this issue"
        onSubmit={send}
        onCancel={onClose}
      >
        <IssueFields draft={draft} set={(changes) => setDraft({ ...draft, ...changes })} />
      </CommandForm>
    </Dialog>
  );
}
