import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { say } from '../../ui/toasts.tsx';
import { AlternateField } from './AlternateField.tsx';
import type { Part } from './lots.ts';

/** Which parts may stand in for this one, best first. Kits see it at once. */
export function AlternatesDialog({ part, onClose }: { part: Part; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(part);
  const change = useCommand(partOperations.setAlternates);
  const [numbers, setNumbers] = useState(() => part.alternates.map((each) => each.number));
  const send = () =>
    change.mutate(
      { input: { partId: part.id, alternates: numbers }, version: seen.version },
      {
        onSuccess: () => {
          say(`What may stand in for ${part.number} is changed.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`What may stand in for ${part.number}?`} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Keep this order"
        onSubmit={send}
        onCancel={onClose}
      >
        <AlternateField numbers={numbers} onChange={setNumbers} except={part.number} />
      </CommandForm>
    </Dialog>
  );
}
