import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { WorkOrder } from './work-orders.ts';

/** What the unit is for, told after it came or told right; the reason stays on record. */
export function SetApplication({ order, onClose }: { order: WorkOrder; onClose: () => void }) {
  const command = useCommand(workOrderOperations.setApplication);
  const [applicationId, setApplicationId] = useState<string | null>(null);
  const [reason, setReason] = useState('');
  const model = useQuery(queryFor(manualOperations.showModel, { modelId: order.model.id })).data;
  const send = (chosen: string) =>
    command.mutate(
      { input: { workOrderId: order.id, applicationId: chosen, reason }, version: order.version },
      {
        onSuccess: () => {
          say(`The application of ${order.number} is on record.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Application of ${order.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={command.error}
        isPending={command.isPending}
        submit="Put on record"
        onCancel={onClose}
        onSubmit={() => applicationId && send(applicationId)}
      >
        <Select
          name="applicationId"
          label="Application"
          hint="Aircraft, engine and position decide angles and settings"
          value={applicationId}
          onChange={setApplicationId}
          choices={(model?.applications ?? []).map((each) => ({
            value: each.id,
            text: `${each.airframe}, ${each.engine}, ${each.position}`,
          }))}
          isRequired
        />
        <TextField name="reason" label="Who said so" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
