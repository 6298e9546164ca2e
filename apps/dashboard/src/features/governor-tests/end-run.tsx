import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Run } from './governor.ts';

export type Ending = 'passed' | 'failed' | 'broken-off';
const words: Record<Ending, { title: string; submit: string; said: string }> = {
  passed: {
    title: 'Every point is good',
    submit: 'End the run as passed',
    said: 'passed: sign its step on the traveler',
  },
  failed: {
    title: 'The governor does not pass',
    submit: 'End the run as failed',
    said: 'failed: its step is signed as failed on the traveler, with a finding',
  },
  'broken-off': { title: 'Break the run off', submit: 'Break it off', said: 'broken off' },
};

/** The end of a run, as what its points say; nothing is added afterwards. */
export function EndRun({ run, result, onClose }: { run: Run; result: Ending; onClose: () => void }) {
  const command = useCommand(governorOperations.endGovernorRun);
  const [reason, setReason] = useState('');
  const { title, submit, said } = words[result];
  return (
    <Dialog title={`${title}, ${run.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={command.error}
        isPending={command.isPending}
        submit={submit}
        onCancel={onClose}
        onSubmit={() =>
          command.mutate(
            { input: { runId: run.id, result, ...(reason ? { reason } : {}) }, version: run.version },
            {
              onSuccess: () => {
                say(`${run.number} ${said}.`);
                onClose();
              },
            },
          )
        }
      >
        {result === 'failed' ? <p>Out: {run.out.join(', ')}.</p> : null}
        <p className="soft">Nothing is read or adjusted in this run any more.</p>
        {result === 'passed' ? null : (
          <TextField name="reason" label="Why" value={reason} onChange={setReason} isRequired />
        )}
      </CommandForm>
    </Dialog>
  );
}
