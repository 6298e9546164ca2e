import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import { noVendor, VendorFields } from './VendorFields.tsx';
import type { OutsideWork, RackPiece, Vendor } from './vendors.ts';

export interface SendOutProps {
  waiting: readonly OutsideWork[];
  vendors: readonly Vendor[];
  today: string;
  /** Pieces in the racks of these work orders. */
  piecesOf: (workOrderIds: readonly string[]) => readonly RackPiece[];
  onClose: () => void;
}

/** Which parts go to which vendor, until when, and which paper has to come back with them. */
export function SendOut({ waiting, vendors, today, piecesOf, onClose }: SendOutProps) {
  const send = useCommand(vendorOperations.sendToVendor);
  const [vendor, setVendor] = useState(noVendor);
  const [stepIds, setStepIds] = useState<readonly string[]>([]);
  const [lotIds, setLotIds] = useState<readonly string[]>([]);
  const free = waiting.filter(({ blocked }) => blocked === null);
  const orders = free.filter(({ stepId }) => stepIds.includes(stepId)).map(({ workOrderId }) => workOrderId);
  const offered = piecesOf([...new Set(orders)]);
  const pieces = offered.filter(({ lotId }) => lotIds.includes(lotId));
  return (
    <Dialog title="Send parts to a vendor" isOpen onClose={onClose}>
      <CommandForm
        problem={send.error}
        isPending={send.isPending}
        submit="Send them"
        onCancel={onClose}
        onSubmit={() =>
          send.mutate(
            {
              input: {
                ...vendor,
                supplierId: vendor.supplierId ?? '',
                stepIds: [...stepIds],
                pieces: pieces.map(({ lotId, quantity }) => ({ lotId, quantity })),
              },
            },
            {
              onSuccess: ({ number }) => {
                say(`${number} is out.`);
                onClose();
              },
            },
          )
        }
      >
        <CheckboxList
          name="stepIds"
          label="Parts"
          value={stepIds}
          onChange={setStepIds}
          choices={free.map((row) => ({
            value: row.stepId,
            text: `${row.workOrderNumber} ${row.position}: ${row.work}`,
          }))}
          isRequired
        />
        {offered.length > 0 ? (
          <CheckboxList
            name="pieces"
            label="Pieces of the rack that go along"
            value={lotIds}
            onChange={setLotIds}
            choices={offered.map(({ lotId, words }) => ({ value: lotId, text: words }))}
          />
        ) : null}
        <VendorFields vendors={vendors} today={today} value={vendor} onChange={setVendor} />
      </CommandForm>
    </Dialog>
  );
}
