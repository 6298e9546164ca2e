import { eventTitles } from '@hubwright/contracts/manuals/words';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkOrder } from './work-orders.ts';

/** The inspector looks at what the desk booked in; after a declared event also for hidden damage. */
export function PreliminaryInspection(props: { order: WorkOrder; signer: Signer; onClose: () => void }) {
  const { order, onClose } = props;
  const [result, setResult] = useState('');
  const [hiddenDamage, setHiddenDamage] = useState('');
  const [isSigning, setSigning] = useState(false);
  const events = order.events.map((event) => eventTitles[event].toLowerCase()).join(', ');
  if (isSigning) {
    return (
      <SignCommand
        op={workOrderOperations.signPreliminaryInspection}
        input={{ workOrderId: order.id, result, hiddenDamage }}
        version={order.version}
        signer={props.signer}
        onClose={onClose}
        onSigned={() => {
          say(`The preliminary inspection of ${order.number} is signed.`);
          onClose();
        }}
      >
        <p>
          {order.number}: {result}
        </p>
        {hiddenDamage ? <p>Hidden damage: {hiddenDamage}</p> : null}
      </SignCommand>
    );
  }
  return (
    <Dialog title={`Preliminary inspection of ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={null}
        isPending={false}
        submit="Go on to sign"
        onSubmit={() => setSigning(true)}
        onCancel={onClose}
      >
        <TextField
          name="result"
          label="What you see"
          hint="Unit, papers and loose items against what was booked in"
          lines={3}
          value={result}
          onChange={setResult}
          isRequired
        />
        {order.events.length > 0 ? (
          <TextField
            name="hiddenDamage"
            label="Hidden damage"
            hint={`After ${events}: what you looked at, and what you found`}
            lines={3}
            value={hiddenDamage}
            onChange={setHiddenDamage}
            isRequired
          />
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
