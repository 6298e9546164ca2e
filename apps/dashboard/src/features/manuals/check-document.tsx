import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { useCallback, useState } from 'react';
import type { ProblemError } from '../../api/problem.ts';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { DocumentIssue } from './documents.ts';

/** An inspector asked whoever issued it: signs that this is the current issue. */
export function CheckDocument(props: { number: string; issue: DocumentIssue; signer: Signer; onClose: () => void }) {
  const { issue, onClose } = props;
  const [checkedOn, setCheckedOn] = useState(useToday());
  const [isSigning, setSigning] = useState(false);
  const [problem, setProblem] = useState<ProblemError | null>(null);
  const goBack = useCallback((wrong: ProblemError) => {
    setProblem(wrong);
    setSigning(false);
  }, []);
  const name = `${props.number} ${issue.issue}`;
  if (isSigning)
    return (
      <SignCommand
        op={documentOperations.checkDocument}
        input={{ issueId: issue.id, checkedOn }}
        signer={props.signer}
        onWrongInput={goBack}
        onClose={onClose}
        onSigned={() => {
          say(`${name} is signed as current.`);
          onClose();
        }}
      >
        <p>
          {name} is current, checked on <DateText date={checkedOn} />
        </p>
      </SignCommand>
    );
  return (
    <Dialog title={`Is ${name} still current?`} isOpen onClose={onClose}>
      <CommandForm
        problem={problem}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={onClose}
      >
        <p>Ask whoever issued it, or look at their list of current publications. A newer issue is entered first.</p>
        <DateField name="checkedOn" label="Checked on" value={checkedOn} onChange={setCheckedOn} isRequired />
      </CommandForm>
    </Dialog>
  );
}
