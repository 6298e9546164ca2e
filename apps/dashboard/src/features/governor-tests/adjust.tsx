import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Caution } from '../../ui/Caution.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Run } from './governor.ts';

const other = 'something else';

/** What was adjusted, from what to what; it says beforehand which points must then be taken again. */
export function Adjust({ run, onClose }: { run: Run; onClose: () => void }) {
  const command = useCommand(governorOperations.recordGovernorAdjustment);
  const { adjustments, points } = run.program.content;
  const [chosen, setChosen] = useState<string | null>(null);
  const [own, setOwn] = useState('');
  const [before, setBefore] = useState('');
  const [after, setAfter] = useState('');
  const what = chosen === other ? own : (chosen ?? '');
  const reopens =
    adjustments.find((one) => one.what === what)?.reopens ?? (chosen === other ? points.map(({ name }) => name) : []);
  return (
    <Dialog title={`Adjust on the bench, ${run.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={command.error}
        isPending={command.isPending}
        submit="Record the adjustment"
        onCancel={onClose}
        onSubmit={() =>
          command.mutate(
            { input: { runId: run.id, what, before, after } },
            {
              onSuccess: ({ reopened }) => {
                say(reopened.length > 0 ? `To be taken again: ${reopened.join(', ')}.` : 'Recorded.');
                onClose();
              },
            },
          )
        }
      >
        <Caution>Stop the drive and let pressure off before a hand goes to the governor.</Caution>
        <Select
          name="what"
          label="What was adjusted"
          value={chosen}
          onChange={setChosen}
          choices={[...adjustments.map((one) => one.what), other].map((text) => ({ value: text, text }))}
          isRequired
        />
        {chosen === other ? (
          <TextField name="what" label="In own words" value={own} onChange={setOwn} isRequired />
        ) : null}
        {reopens.length > 0 ? <p className="small">To be taken again then: {reopens.join(', ')}.</p> : null}
        <TextField name="before" label="From" value={before} onChange={setBefore} isRequired />
        <TextField name="after" label="To" value={after} onChange={setAfter} isRequired />
      </CommandForm>
    </Dialog>
  );
}
