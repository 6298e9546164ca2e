import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { NewerVersion, useSeen } from '../../ui/seen-version.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Settings } from './reminders.ts';

const words = [
  { field: 'senderName', label: 'Sender’s name', hint: 'Whom the letter comes from', lines: undefined },
  { field: 'senderEmail', label: 'Sender’s e-mail address', hint: 'Empty: letters are only printed', lines: undefined },
  { field: 'replyTo', label: 'Answers go to', hint: 'Empty: to the sender', lines: undefined },
  { field: 'subject', label: 'Subject', hint: undefined, lines: undefined },
  { field: 'opening', label: 'Opening words', hint: undefined, lines: 3 },
  {
    field: 'closing',
    label: 'Closing words',
    hint: 'Who decides, and how to get no more letters, is always added',
    lines: 3,
  },
] as const;
type Words = Record<(typeof words)[number]['field'], string>;

/** "180, 90, 30" as numbers; what is no number is left for the server to name. */
function daysOf(text: string): number[] {
  return text
    .split(/[\s,;]+/)
    .filter(Boolean)
    .map(Number);
}

export function ReminderSettingsDialog({ settings, onClose }: { settings: Settings; onClose: () => void }) {
  const { seen, isNewer, takeNewest } = useSeen(settings);
  const change = useCommand(reminderOperations.changeReminderSettings);
  const [isOn, setOn] = useState(settings.isOn);
  const [intervals, setIntervals] = useState(settings.intervals.join(', '));
  const [text, setText] = useState<Words>(settings);
  const [reason, setReason] = useState('');
  const send = () => {
    const { senderName, senderEmail, replyTo, subject, opening, closing } = text;
    const input = {
      isOn,
      intervals: daysOf(intervals),
      senderName,
      senderEmail,
      replyTo,
      subject,
      opening,
      closing,
      reason,
    };
    change.mutate(
      { input, version: seen.version },
      {
        onSuccess: () => {
          say(isOn ? 'Letters go by these settings from now on.' : 'Letters are off.');
          onClose();
        },
      },
    );
  };
  return (
    <Dialog title="Reminder letters" isOpen onClose={onClose}>
      {isNewer ? <NewerVersion onTake={takeNewest} /> : null}
      <CommandForm
        problem={change.error}
        isPending={change.isPending}
        submit="Set it so"
        onSubmit={send}
        onCancel={onClose}
      >
        <Checkbox isSelected={isOn} onChange={setOn}>
          Letters go out
        </Checkbox>
        <TextField
          name="intervals"
          label="Days before the likely date"
          hint="Such as 180, 90, 30: a unit is told of once at each"
          value={intervals}
          onChange={setIntervals}
          isRequired
        />
        {words.map(({ field, label, hint, lines }) => (
          <TextField
            key={field}
            name={field}
            label={label}
            {...(hint ? { hint } : {})}
            {...(lines ? { lines } : {})}
            value={text[field]}
            onChange={(value) => setText({ ...text, [field]: value })}
          />
        ))}
        <TextField name="reason" label="Reason" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
