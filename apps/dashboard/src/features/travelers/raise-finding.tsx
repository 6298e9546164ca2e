import { findingOperations } from '@hubwright/contracts/findings/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import { FindingFields, findingInput, noFinding } from './finding-fields.tsx';
import type { Traveler } from './traveler.ts';

/** Says that something is wrong with a part, outside of any measured step. */
export function RaiseFinding({ traveler, onClose }: { traveler: Traveler; onClose: () => void }) {
  const raise = useCommand(findingOperations.raiseFinding);
  const [draft, setDraft] = useState(noFinding);
  return (
    <Dialog title={`Finding on ${traveler.title}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={raise.error}
        isPending={raise.isPending}
        submit="Raise the finding"
        onCancel={onClose}
        onSubmit={() =>
          raise.mutate(
            { input: { travelerId: traveler.id, ...findingInput(draft) } },
            {
              onSuccess: (reply) => {
                say(`Finding ${reply.number} is raised; an inspector decides it.`);
                onClose();
              },
            },
          )
        }
      >
        <FindingFields partClass={traveler.partClass} draft={draft} onChange={setDraft} />
      </CommandForm>
    </Dialog>
  );
}
