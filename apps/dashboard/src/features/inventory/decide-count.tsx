import { countOperations } from '@hubwright/contracts/inventory/count-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type Count, differenceWords } from './counts.ts';
import { freedWords } from './stock-words.ts';

const verdicts = [
  { value: 'recount', text: 'Have it counted again' },
  { value: 'approved', text: 'Approve: the difference is written' },
  { value: 'refused', text: 'Refuse: the book stays as it is' },
] as const;

/** The second person's decision about a large difference. */
export function DecideCountDialog({ count, onClose }: { count: Count; onClose: () => void }) {
  const decide = useCommand(countOperations.decideCount);
  const [verdict, setVerdict] = useState<(typeof verdicts)[number]['value'] | null>(null);
  const [note, setNote] = useState('');
  const send = () =>
    decide.mutate(
      { input: { countId: count.id, verdict: verdict as NonNullable<typeof verdict>, note } },
      {
        onSuccess: ({ freed }) => {
          say(`The count of ${count.lotCode} is decided.${freedWords(freed)}`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Decide the count of ${count.lotCode}`} isOpen onClose={onClose}>
      <CommandForm
        problem={decide.error}
        isPending={decide.isPending}
        submit="Decide"
        onSubmit={send}
        onCancel={onClose}
      >
        <p>
          {count.counter.displayName} counted {count.counted} of <span className="code">{count.part.number}</span> in{' '}
          {count.place}; the book says {count.onBook}: {differenceWords(count.difference)} (up to {count.tolerance} is
          written without you). Counted because: {count.reason}
        </p>
        <RadioList
          name="verdict"
          label="What is to be done"
          value={verdict}
          onChange={setVerdict}
          choices={verdicts}
          isRequired
        />
        <TextField name="note" label="Note" hint="What you found out" lines={2} value={note} onChange={setNote} />
      </CommandForm>
    </Dialog>
  );
}
