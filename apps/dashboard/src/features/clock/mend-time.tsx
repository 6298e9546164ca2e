import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { InstantText } from '../../format/values.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { type TimeEntry, workWords } from './clock.ts';

/** An instant as a `datetime-local` entry shows it on this device. */
function onDevice(instant: string): string {
  const at = new Date(instant);
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}

const asInstant = (typed: string) => (Number.isNaN(Date.parse(typed)) ? '' : new Date(typed).toISOString());

/** When it really ended, and why it was not scanned: a new entry takes the place of the forgotten or wrong one. */
export function MendTime({ entry, onClose }: { entry: TimeEntry; onClose: () => void }) {
  const mend = useCommand(clockOperations.mendTime);
  const [startedAt, setStartedAt] = useState(onDevice(entry.startedAt));
  const [endedAt, setEndedAt] = useState(entry.endedAt ? onDevice(entry.endedAt) : '');
  const [reason, setReason] = useState('');
  const untouched = startedAt === onDevice(entry.startedAt);
  const send = () =>
    mend.mutate(
      {
        input: {
          entryId: entry.id,
          startedAt: untouched ? entry.startedAt : asInstant(startedAt),
          endedAt: asInstant(endedAt),
          reason,
        },
        version: entry.version,
      },
      {
        onSuccess: () => {
          say('The time is mended; the earlier entry stays on record.');
          onClose();
        },
      },
    );
  const when = { type: 'datetime-local' as 'text', isRequired: true };
  return (
    <Dialog title="When was this really done?" isOpen onClose={onClose}>
      <CommandForm problem={mend.error} isPending={mend.isPending} submit="Mend it" onSubmit={send} onCancel={onClose}>
        <p>
          {workWords(entry)}, begun <InstantText instant={entry.startedAt} />
          {entry.forgotten ? ': it was never scanned out.' : ''}
        </p>
        <TextField {...when} name="startedAt" label="Begun" value={startedAt} onChange={setStartedAt} />
        <TextField {...when} name="endedAt" label="Ended" value={endedAt} onChange={setEndedAt} />
        <TextField name="reason" label="Why it is entered now" value={reason} onChange={setReason} isRequired />
      </CommandForm>
    </Dialog>
  );
}
