import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { formatDate } from '../../format/dates.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
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
  const [supplierId, setSupplierId] = useState<string | null>(null);
  const [text, setText] = useState({ purchaseOrder: '', paperDue: '', expectedOn: '' });
  const [stepIds, setStepIds] = useState<readonly string[]>([]);
  const [lotIds, setLotIds] = useState<readonly string[]>([]);
  const free = waiting.filter(({ blocked }) => blocked === null);
  const orders = free.filter(({ stepId }) => stepIds.includes(stepId)).map(({ workOrderId }) => workOrderId);
  const offered = piecesOf([...new Set(orders)]);
  const pieces = offered.filter(({ lotId }) => lotIds.includes(lotId));
  const set = (name: keyof typeof text) => (value: string) => setText({ ...text, [name]: value });
  const approval = ({ approvedUntil }: Vendor) =>
    approvedUntil && approvedUntil >= today ? `approved until ${formatDate(approvedUntil)}` : 'not approved today';
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
                ...text,
                supplierId: supplierId ?? '',
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
        <Select
          name="supplierId"
          label="Vendor"
          value={supplierId}
          onChange={setSupplierId}
          choices={vendors.map((each) => ({ value: each.id, text: `${each.name} (${approval(each)})` }))}
          isRequired
        />
        <TextField
          name="purchaseOrder"
          label="Purchase order"
          value={text.purchaseOrder}
          onChange={set('purchaseOrder')}
          isRequired
        />
        <TextField
          name="paperDue"
          label="Paper that must come back"
          hint="For example: certificate with the bake chart"
          value={text.paperDue}
          onChange={set('paperDue')}
          isRequired
        />
        <DateField
          name="expectedOn"
          label="Expected back"
          value={text.expectedOn}
          onChange={set('expectedOn')}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
