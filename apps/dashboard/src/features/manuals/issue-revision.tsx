import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { ProblemError } from '../../api/problem.ts';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { ContentFile, type FileRead } from './ContentFile.tsx';
import { currentOf, type Manual, revisionQuery } from './manuals.ts';
import { contentOf, placeInWords } from './revision-draft.ts';

/** The same refusal, each fault with its place in the file before it. */
function withPlaces(problem: ProblemError | null): ProblemError | null {
  if (!problem) return null;
  const errors = problem.facts.errors.map(({ pointer, detail }) =>
    pointer.startsWith('/models')
      ? { pointer: '/models', detail: `${placeInWords(pointer)}: ${detail}` }
      : { pointer, detail },
  );
  return new ProblemError({ ...problem.facts, errors });
}

/** A whole revision at once: with what the current one says, or with what stands in a file. */
export function IssueRevision({ manual, onClose }: { manual: Manual; onClose: () => void }) {
  const current = currentOf(manual);
  const issue = useCommand(manualOperations.issueRevision);
  const before = useQuery({ ...revisionQuery(current?.id ?? ''), enabled: current !== undefined }).data;
  const [draft, setDraft] = useState({ revision: '', issuedOn: '' });
  const [from, setFrom] = useState<'same' | 'file' | null>(current ? null : 'file');
  const [file, setFile] = useState<FileRead>();
  const models = from === 'same' && before ? contentOf(before) : (file?.content ?? []);
  const send = () =>
    issue.mutate(
      { input: { manualId: manual.id, ...draft, models } },
      {
        onSuccess: () => {
          say(`Revision ${draft.revision} of ${manual.number} is current. An inspector checks its currency.`);
          onClose();
        },
      },
    );
  const put = (key: keyof typeof draft) => (text: string) => setDraft({ ...draft, [key]: text });
  return (
    <Dialog title={`Enter a revision of ${manual.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={withPlaces(issue.error)}
        isPending={issue.isPending}
        submit="Make it current"
        onSubmit={send}
        onCancel={onClose}
      >
        {current ? (
          <p>
            It supersedes revision {current.revision}: work that goes by {current.revision} stands still until an
            inspector has compared both.
          </p>
        ) : null}
        <div className="field-grid">
          <TextField name="revision" label="Revision" value={draft.revision} onChange={put('revision')} isRequired />
          <DateField name="issuedOn" label="Issued on" value={draft.issuedOn} onChange={put('issuedOn')} isRequired />
        </div>
        {current ? (
          <RadioList
            label="What it says"
            value={from}
            onChange={setFrom}
            choices={[
              { value: 'same', text: `The same as revision ${current.revision} for every model of ours` },
              { value: 'file', text: 'What stands in a file' },
            ]}
            isRequired
          />
        ) : null}
        {from === 'file' ? <ContentFile manual={manual} before={before} read={file} onRead={setFile} /> : null}
      </CommandForm>
    </Dialog>
  );
}
