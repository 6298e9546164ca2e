import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Checklist } from './checklists.ts';
import { classWords } from './stock-words.ts';

/** The next revision of a class's checklist, written as it is read: a line for each thing to look at. */
export function IssueChecklist(props: {
  partClass: Checklist['partClass'];
  checklist: Checklist | undefined;
  onClose: () => void;
}) {
  const { partClass, checklist, onClose } = props;
  const issue = useCommand(receivingOperations.issueChecklist);
  const [text, setText] = useState(checklist?.items.join('\n') ?? '');
  const items = text
    .split('\n')
    .map((item) => item.trim())
    .filter((item) => item !== '');
  const send = () =>
    issue.mutate(
      { input: { partClass, items } },
      {
        onSuccess: ({ revision }) => {
          say(`Revision ${revision} is asked from the next box on.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`What is looked at: ${classWords[partClass]}`} isOpen onClose={onClose}>
      <CommandForm
        problem={issue.error}
        isPending={issue.isPending}
        submit={`Issue revision ${(checklist?.revision ?? 0) + 1}`}
        onSubmit={send}
        onCancel={onClose}
      >
        <TextField
          name="items"
          label="What is looked at"
          hint="A line each, at most thirty; each is answered good, not good or does not apply"
          lines={8}
          value={text}
          onChange={setText}
          isRequired
        />
        <p className="soft small">
          Boxes that came in before keep the revision they answered. Whoever receives answers every line; what is not
          good holds the lot in an inspector’s sight.
        </p>
      </CommandForm>
    </Dialog>
  );
}
