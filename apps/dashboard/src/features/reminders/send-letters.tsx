import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import type { DueLetter } from './reminders.ts';

type Way = 'e-mail' | 'paper';
const byMail = { value: 'e-mail', text: 'e-mail, sent at once' } as const;
const onPaper = { value: 'paper', text: 'paper, printed and posted by us' } as const;

/** Chooses the way for each letter and writes them; what was shown is what is written, or nothing is. */
export function SendDialog({ letters, onClose }: { letters: readonly DueLetter[]; onClose: () => void }) {
  const send = useCommand(reminderOperations.sendReminders);
  const [ways, setWays] = useState<Record<string, Way>>(
    Object.fromEntries(letters.map(({ customer, ways: open }) => [customer.id, open[0] ?? 'paper'])),
  );
  const submit = () => {
    const input = {
      letters: letters.map(({ customer, units }) => ({
        customerId: customer.id,
        way: ways[customer.id] ?? 'paper',
        units: units.map(({ unitId, intervalDays }) => ({ unitId, intervalDays })),
      })),
    };
    send.mutate(
      { input },
      {
        onSuccess: (reply) => {
          say(`Written: ${reply.letters.map(({ number }) => number).join(', ')}. The log says what becomes of each.`);
          onClose();
        },
      },
    );
  };
  return (
    <Dialog title={`Write ${countOf(letters.length, 'letter')}`} isOpen onClose={onClose}>
      <CommandForm
        problem={send.error}
        isPending={send.isPending}
        submit="Write them now"
        onSubmit={submit}
        onCancel={onClose}
      >
        {letters.map(({ customer, ways: open, units }) => (
          <Select
            key={customer.id}
            name={`way-${customer.code}`}
            label={`${customer.name}, ${countOf(units.length, 'unit')}`}
            value={ways[customer.id] ?? 'paper'}
            onChange={(way) => setWays({ ...ways, [customer.id]: way })}
            choices={open.includes('e-mail') ? [byMail, onPaper] : [onPaper]}
            isRequired
          />
        ))}
      </CommandForm>
    </Dialog>
  );
}
