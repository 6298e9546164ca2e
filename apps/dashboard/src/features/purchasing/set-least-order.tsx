import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Supplier } from './suppliers.ts';

/** Under which sum the supplier takes no order. */
export function LeastOrderDialog(props: { supplier: Supplier; currency: string; onClose: () => void }) {
  const { supplier, currency, onClose } = props;
  const save = useCommand(approvalOperations.setLeastOrder);
  const [leastOrder, setLeastOrder] = useState(supplier.leastOrder);
  const send = () =>
    save.mutate(
      { input: { supplierId: supplier.id, leastOrder }, version: supplier.version },
      {
        onSuccess: () => {
          say(`The least order of ${supplier.name} is on record.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Least order of ${supplier.name}`} isOpen onClose={onClose}>
      <CommandForm problem={save.error} isPending={save.isPending} submit="Keep" onSubmit={send} onCancel={onClose}>
        <DecimalField
          name="leastOrder"
          label="Takes no order under"
          hint="0 where it takes any"
          unit={currency}
          value={leastOrder}
          onChange={setLeastOrder}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
