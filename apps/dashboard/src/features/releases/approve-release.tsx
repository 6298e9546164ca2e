import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Checklist } from './releases.ts';

/** The approval for return to service: one signature, refused while anything is open. */
export function ApproveRelease(props: { checklist: Checklist; signer: Signer; mayApprove: boolean }) {
  const { checklist } = props;
  const [remarks, setRemarks] = useState('');
  const [isSigning, setSigning] = useState(false);
  return (
    <div className="stack">
      <Caution>{checklist.caution}</Caution>
      {checklist.notYou ? <p>{checklist.notYou}</p> : null}
      {props.mayApprove ? (
        <>
          <TextField name="remarks" label="Remarks on the record" lines={2} value={remarks} onChange={setRemarks} />
          <div className="row">
            <Button weight={checklist.ready ? 'next' : 'plain'} onPress={() => setSigning(true)}>
              Approve for return to service
            </Button>
          </div>
        </>
      ) : null}
      {isSigning ? (
        <SignCommand
          op={releaseOperations.approveRelease}
          input={{ workOrderId: checklist.workOrder.id, remarks }}
          version={checklist.workOrder.version}
          signer={props.signer}
          onClose={() => setSigning(false)}
          onSigned={(reply) => {
            say(`${reply.number} is signed: ${reply.word}.`);
            setSigning(false);
          }}
        >
          <p>
            {checklist.workOrder.number}: the record will say <strong>{checklist.word}</strong>
          </p>
          <p className="small">{checklist.wordBasis}</p>
          {remarks ? <p className="small">{remarks}</p> : null}
        </SignCommand>
      ) : null}
    </div>
  );
}
