import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { useToday } from '../../format/use-today.ts';
import { DateText } from '../../format/values.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Revision } from './manuals.ts';

/** An inspector asked the maker: signs that this is the current revision. */
export function CheckCurrency(props: { revision: Revision; signer: Signer; onClose: () => void }) {
  const { revision, onClose } = props;
  const [checkedOn, setCheckedOn] = useState(useToday());
  const name = `${revision.manual.number} revision ${revision.revision}`;
  return (
    <FormThenSign
      title={`Is ${name} still current?`}
      onClose={onClose}
      signing={{
        op: manualOperations.checkCurrency,
        input: { revisionId: revision.id, checkedOn },
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
      <p>Ask the maker, or look at the maker’s list of current publications. A newer revision is entered first.</p>
      <DateField name="checkedOn" label="Checked on" value={checkedOn} onChange={setCheckedOn} isRequired />
    </FormThenSign>
  );
}
