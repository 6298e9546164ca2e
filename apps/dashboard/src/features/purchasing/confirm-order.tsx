import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Order } from './orders.ts';

/** What the supplier wrote back, line by line; filled in with what was asked for, since that is what most say. */
export function ConfirmDialog({ order, onClose }: { order: Order; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(order);
  const confirm = useCommand(orderOperations.confirmOrder);
  const open = seen.items.filter((item) => item.open > 0);
  const [reference, setReference] = useState('');
  const [lines, setLines] = useState(() =>
    open.map((item) => ({
      lineId: item.id,
      quantity: String(item.confirmedQuantity ?? item.quantity),
      comesOn: item.confirmedOn ?? item.dueOn,
    })),
  );
  const change = (at: number, changes: Partial<(typeof lines)[number]>) =>
    setLines(lines.map((line, place) => (place === at ? { ...line, ...changes } : line)));
  const send = () =>
    confirm.mutate(
      {
        input: {
          ...{ orderId: order.id, reference },
          lines: lines.map((line) => ({
            ...line,
            quantity: line.quantity === '' ? Number.NaN : Number(line.quantity),
          })),
        },
        version: seen.version,
      },
      {
        onSuccess: () => {
          say(`${order.number} is confirmed; the kits count on these days.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`What ${order.supplier.name} confirmed of ${order.number}`} width="wide" isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={confirm.error}
        isPending={confirm.isPending}
        submit="Write down the confirmation"
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField
          name="reference"
          label="Supplier’s reference"
          hint="Number of the confirmation, or who said it"
          value={reference}
          onChange={setReference}
          isRequired
        />
        {open.map((item, at) => (
          <fieldset key={item.id} className="field-group">
            <legend>
              {item.part.number} <span className="soft small">{item.part.description}</span>
            </legend>
            <div className="field-grid">
              <DecimalField
                name={`lines/${at}/quantity`}
                label="Will bring"
                hint={`${item.quantity} ordered, ${item.received} have come`}
                unit={item.part.issueUnit}
                decimals={0}
                value={lines[at]?.quantity ?? ''}
                onChange={(quantity) => change(at, { quantity })}
                isRequired
              />
              <DateField
                name={`lines/${at}/comesOn`}
                label="Comes on"
                value={lines[at]?.comesOn ?? ''}
                onChange={(comesOn) => change(at, { comesOn })}
                isRequired
              />
            </div>
          </fieldset>
        ))}
      </CommandForm>
    </Dialog>
  );
}
