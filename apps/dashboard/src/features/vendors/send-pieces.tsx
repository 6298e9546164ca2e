import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import { noVendor, VendorFields } from './VendorFields.tsx';
import type { RackPiece, Vendor } from './vendors.ts';

/** Pieces of one unit's rack that go out without a part; its page of the build has them. */
export function SendPieces(props: {
  units: readonly { workOrderId: string; words: string }[];
  workOrderId: string | null;
  onUnit: (workOrderId: string | null) => void;
  offered: readonly RackPiece[];
  vendors: readonly Vendor[];
  today: string;
  onClose: () => void;
}) {
  const { units, workOrderId, onUnit, offered, vendors, today, onClose } = props;
  const send = useCommand(vendorOperations.sendToVendor);
  const [vendor, setVendor] = useState(noVendor);
  const [lotIds, setLotIds] = useState<readonly string[]>([]);
  const pieces = offered
    .filter(({ lotId }) => lotIds.includes(lotId))
    .map(({ lotId, quantity }) => ({ lotId, quantity }));
  return (
    <Dialog title="Send pieces without a part" isOpen onClose={onClose}>
      <CommandForm
        problem={send.error}
        isPending={send.isPending}
        submit="Send them"
        onCancel={onClose}
        onSubmit={() =>
          send.mutate(
            { input: { ...vendor, supplierId: vendor.supplierId ?? '', stepIds: [], pieces } },
            {
              onSuccess: ({ number }) => {
                say(`${number} is out.`);
                onClose();
              },
            },
          )
        }
      >
        <Select
          name="workOrderId"
          label="Unit"
          placeholder="Choose whose rack"
          value={workOrderId}
          onChange={onUnit}
          choices={units.map(({ workOrderId: value, words }) => ({ value, text: words }))}
          isRequired
        />
        {workOrderId ? (
          <CheckboxList
            name="pieces"
            label="Pieces of its rack"
            hint={offered.length === 0 ? 'Nothing lies in its rack' : ''}
            value={lotIds}
            onChange={setLotIds}
            choices={offered.map(({ lotId, words }) => ({ value: lotId, text: words }))}
            isRequired
          />
        ) : null}
        <VendorFields vendors={vendors} today={today} value={vendor} onChange={setVendor} />
      </CommandForm>
    </Dialog>
  );
}
