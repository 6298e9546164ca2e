import { type ReleaseContent, releaseOperations } from '@hubwright/contracts/releases/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type Release, releaseQuery } from './releases.ts';

const fields = ['description', 'remarks', 'statement'] as const;
type Words = Record<(typeof fields)[number], string>;
interface Correcting {
  release: Release;
  signer: Signer;
  onClose: () => void;
}

/** Only the words that are different are sent, and only they are shown before the signature. */
function changedWords(words: Words, content: ReleaseContent): Partial<Words> {
  return Object.fromEntries(fields.filter((each) => words[each] !== content[each]).map((each) => [each, words[each]]));
}

function WordsForm({ release, content, signer, onClose }: Correcting & { content: ReleaseContent }) {
  const { description, remarks, statement } = content;
  const [words, setWords] = useState<Words>({ description, remarks, statement });
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const [wrong, setWrong] = useState<ProblemError | null>(null);
  const changed = changedWords(words, content);
  const set = (field: keyof Words) => (text: string) => setWords({ ...words, [field]: text });
  if (isSigning) {
    return (
      <SignCommand
        op={releaseOperations.correctRelease}
        input={{ releaseId: release.id, reason, ...changed }}
        signer={signer}
        onClose={onClose}
        onWrongInput={(problem) => {
          setWrong(problem);
          setSigning(false);
        }}
        onSigned={(reply) => {
          say(`${reply.number} is signed and takes the place of ${release.number}, which stays archived.`);
          onClose();
        }}
      >
        <p>
          {release.number}: {reason}
        </p>
        {Object.entries(changed).map(([field, text]) => (
          <p key={field} className="small">
            New {field}: {text === '' ? 'none' : text}
          </p>
        ))}
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Correct ${release.number}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={wrong}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={onClose}
      >
        <p className="soft small">
          The unit, its parts, times and findings stay as signed. {release.number} stays archived and is marked.
        </p>
        <TextField name="reason" label="What was wrong with it" value={reason} onChange={setReason} isRequired />
        <TextField
          name="description"
          label="Description of the work"
          lines={6}
          value={words.description}
          onChange={set('description')}
          isRequired
        />
        <TextField name="remarks" label="Remarks" lines={2} value={words.remarks} onChange={set('remarks')} />
        <TextField
          name="statement"
          label="Approval statement"
          lines={3}
          value={words.statement}
          onChange={set('statement')}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}

/** The words of a release put right by a new signature; they begin as they were signed. */
export function CorrectRelease(props: Correcting) {
  const { data } = useQuery(releaseQuery(props.release.id));
  if (data) return <WordsForm {...props} content={data.content} />;
  return (
    <Dialog title={`Correct ${props.release.number}`} isOpen onClose={props.onClose} width="wide">
      <Skeleton lines={8} />
    </Dialog>
  );
}
