import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { useState } from 'react';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { DocumentIssue } from './documents.ts';

/** An inspector asked whoever issued it: signs that this is the current issue. */
export function CheckDocument(props: { number: string; issue: DocumentIssue; signer: Signer; onClose: () => void }) {
  const { issue, onClose } = props;
  const [checkedOn, setCheckedOn] = useState(useToday());
  const name = `${props.number} ${issue.issue}`;
  return (
    <FormThenSign
      title={`Is ${name} still current?`}
      onClose={onClose}
      signing={{
        op: documentOperations.checkDocument,
        input: { issueId: issue.id, checkedOn },
        signer: props.signer,
        onSigned: () => {
          say(`${name} is signed as current.`);
          onClose();
        },
        summary: (
          <p>
            {name} is current, checked on <DateText date={checkedOn} />
          </p>
        ),
      }}
    >
      <p>Ask whoever issued it, or look at their list of current publications. A newer issue is entered first.</p>
      <DateField name="checkedOn" label="Checked on" value={checkedOn} onChange={setCheckedOn} isRequired />
    </FormThenSign>
  );
}
