import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Load, LoadPart } from './loads.ts';

/** A part comes out before the load is signed; the reason stays on record. */
export function TakeOut({ load, part, onClose }: { load: Load; part: LoadPart; onClose: () => void }) {
  const takeOut = useCommand(loadOperations.takeOutOfLoad);
  const [reason, setReason] = useState('');
  return (
    <Dialog title={`Take ${part.travelerNumber} out of ${load.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={takeOut.error}
        isPending={takeOut.isPending}
        submit="Take it out"
        onCancel={onClose}
        onSubmit={() =>
          takeOut.mutate(
            { input: { loadId: load.id, stepId: part.stepId, reason }, version: load.version },
            {
              onSuccess: ({ state }) => {
                const rest = state === 'broken-up' ? ' It was the last part: the load has ended.' : '';
                say(`${part.travelerNumber} is out of ${load.number}.${rest}`);
                onClose();
              },
            },
          )
        }
      >
        <TextField name="reason" label="Why, in one line" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
