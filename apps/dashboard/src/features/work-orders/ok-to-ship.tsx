import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { LooseItemTicks } from './LooseItems.tsx';
import type { WorkOrder } from './work-orders.ts';

/** The desk's word that it may leave: beside the inspector's release, never instead of it. */
export function OkToShip({ order, onClose }: { order: WorkOrder; onClose: () => void }) {
  const ok = useCommand(workOrderOperations.okToShip);
  const [looseItemsPacked, setPacked] = useState<string[]>([]);
  const [taggedUnserviceable, setTagged] = useState(false);
  const [unpaidReason, setUnpaidReason] = useState('');
  const input = {
    workOrderId: order.id,
    looseItemsPacked,
    taggedUnserviceable,
    ...(unpaidReason === '' ? {} : { unpaidReason }),
  };
  return (
    <Dialog title={`OK to ship ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={ok.error}
        isPending={ok.isPending}
        submit="OK to ship"
        onCancel={onClose}
        onSubmit={() =>
          ok.mutate(
            { input, version: order.version },
            {
              onSuccess: () => {
                say(`${order.number} may leave.`);
                onClose();
              },
            },
          )
        }
      >
        <LooseItemTicks
          order={order}
          name="looseItemsPacked"
          label="Packed with it"
          value={looseItemsPacked}
          onChange={setPacked}
        />
        {order.stage === 'returning-unrepaired' ? (
          <Checkbox name="taggedUnserviceable" isSelected={taggedUnserviceable} onChange={setTagged}>
            Every piece carries an unserviceable tag
          </Checkbox>
        ) : null}
        {ok.error?.type === 'unpaid' ? (
          <TextField name="unpaidReason" label="Why it leaves unpaid" value={unpaidReason} onChange={setUnpaidReason} />
        ) : null}
        <p className="small soft">
          Charged or oily parts may be dangerous goods in transport; the carrier and the local authority say how they
          are packed.
        </p>
      </CommandForm>
    </Dialog>
  );
}
