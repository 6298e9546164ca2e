import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { Caution } from '../../ui/Caution.tsx';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';

/** Begins teardown: a traveler per serialized part is raised. */
export function BeginTeardown(props: { workOrderId: string; number: string; onClose: () => void }) {
  const begin = useCommand(travelerOperations.beginTeardown);
  const [isReleased, setReleased] = useState(false);
  return (
    <Dialog title={`Begin teardown of ${props.number}`} isOpen onClose={props.onClose}>
      <CommandForm
        problem={begin.error}
        isPending={begin.isPending}
        submit="Begin teardown"
        onCancel={props.onClose}
        onSubmit={() =>
          begin.mutate(
            { input: { workOrderId: props.workOrderId, energyReleased: isReleased as true } },
            {
              onSuccess: (reply) => {
                say(`${countOf(reply.travelers.length, 'traveler')} raised.`);
                props.onClose();
              },
            },
          )
        }
      >
        <Caution>
          Air, nitrogen and springs in the hub store energy that maims. Release it only by the current approved manual,
          by people trained for it, under the shop’s and the local authority’s rules.
        </Caution>
        <Checkbox name="energyReleased" isSelected={isReleased} onChange={setReleased}>
          Charge and spring energy were released by the manual’s procedure
        </Checkbox>
      </CommandForm>
    </Dialog>
  );
}
