import { dimensionOperations, type WorkOrderDimensions } from '@hubwright/contracts/work-orders/dimension-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { Caution } from '../../ui/Caution.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { DifferenceList } from './DifferenceList.tsx';

interface Shortened {
  id: string;
  number: string;
  version: number;
}

/** What shortening every blade changes is seen while the diameter is chosen, and signed as it was seen. */
export function ShortenBlades(props: {
  order: Shortened;
  diameter: WorkOrderDimensions['diameter'];
  signer: Signer;
  onClose: () => void;
}) {
  const { order, onClose } = props;
  const [diameter, setDiameter] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const [isSigning, setSigning] = useState(false);
  const asked = { workOrderId: order.id, diameter: diameter ?? '0' };
  const plan = useQuery({ ...queryFor(dimensionOperations.shorteningDifferences, asked), enabled: diameter !== null });
  const shown = diameter === null ? undefined : plan.data;
  const agreed = shown?.differences.filter(({ area }) => area === 'scope') ?? [];
  if (isSigning && diameter !== null)
    return (
      <SignCommand
        op={dimensionOperations.shortenBlades}
        input={{ workOrderId: order.id, diameter, reason }}
        version={order.version}
        signer={props.signer}
        onClose={() => setSigning(false)}
        onWrongInput={() => setSigning(false)}
        onSigned={({ designation }) => {
          say(`Every blade is shortened to ${diameter}; the propeller becomes ${designation}.`);
          onClose();
        }}
      >
        <p>
          {order.number}: every blade to a diameter of {diameter}. {reason}
        </p>
        <DifferenceList differences={agreed} from="Now" to="From now on" />
      </SignCommand>
    );
  return (
    <Dialog title={`Shorten every blade of ${order.number}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={null}
        isPending={diameter !== null && plan.isFetching}
        submit="Go on to sign"
        onSubmit={() => shown && setSigning(true)}
        onCancel={onClose}
      >
        <Caution>
          Shortening is a major repair of every blade alike. Only the current approved manual and the approval of this
          installation say whether it is allowed.
        </Caution>
        <div className="field-grid">
          <Select
            name="diameter"
            label="New diameter"
            value={diameter}
            onChange={setDiameter}
            choices={props.diameter.allowed.map((one) => ({
              value: one.diameter,
              text: `${one.diameter}, then ${one.designation}`,
            }))}
            isRequired
          />
          <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
        </div>
        <section aria-live="polite" className="stack" aria-label="What it changes">
          {diameter !== null && plan.error ? <Refusal problem={plan.error} /> : null}
          {shown ? <DifferenceList differences={shown.differences} from="Now" to="From now on" /> : null}
        </section>
      </CommandForm>
    </Dialog>
  );
}
