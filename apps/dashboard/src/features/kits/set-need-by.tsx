import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Kit } from './kit-detail.ts';

/** The last good day for the kit to be whole. Shortages and order-by dates follow it. */
export function NeedByDialog({ kit, onClose }: { kit: Kit; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(kit);
  const change = useCommand(kitsOperations.setNeedBy);
  const [needBy, setNeedBy] = useState(kit.needBy);
  const send = () =>
    change.mutate(
      { input: { kitId: kit.id, needBy }, version: seen.version },
      {
        onSuccess: () => {
          say(`${kit.code} has a new need date.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`When is ${kit.code} needed?`} isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Change the need date"
        onSubmit={send}
        onCancel={onClose}
      >
        <DateField
          name="needBy"
          label="Needed by"
          hint="The last good day"
          value={needBy}
          onChange={setNeedBy}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
