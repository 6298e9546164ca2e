import { arrivalOperations } from '@hubwright/contracts/due-dates/arrival-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Arrivals } from './arrivals.ts';

/** What the shop assumes of units whose interval binds nobody: a number of its own, or none. */
export function AssumptionDialog({ assumption, onClose }: { assumption: Arrivals['assumption']; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(assumption);
  const assume = useCommand(arrivalOperations.assumeArrivals);
  const [percent, setPercent] = useState(assumption.recommendedPercent?.toString() ?? '');
  const [reason, setReason] = useState('');
  const send = () =>
    assume.mutate(
      { input: { recommendedPercent: percent === '' ? null : Number(percent), reason }, version: seen.version },
      {
        onSuccess: () => {
          say('Expected arrivals are counted by the new assumption.');
          onClose();
        },
      },
    );
  return (
    <Dialog title="How many of the recommended ones come?" isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={assume.error}
        isPending={assume.isPending}
        submit="Assume this"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          A recommended interval binds nobody, and nothing on record says how many follow it. What you write here is
          your assumption, and is called that wherever it counts.
        </p>
        <DecimalField
          name="recommendedPercent"
          label="Of a hundred units with a recommended interval come"
          hint="Leave it empty to assume nothing"
          decimals={0}
          size={5}
          value={percent}
          onChange={setPercent}
        />
        <TextField
          name="reason"
          label="Reason"
          hint="What it rests on"
          value={reason}
          onChange={setReason}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
