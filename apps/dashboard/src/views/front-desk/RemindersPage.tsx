import { letterStates, letterStateTitles } from '@hubwright/contracts/reminders/shapes';
import { z } from 'zod';
import { DueLetters } from '../../features/reminders/DueLetters.tsx';
import { LetterLog } from '../../features/reminders/LetterLog.tsx';
import { ReminderSettings } from '../../features/reminders/ReminderSettings.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { InlineSelect } from '../../ui/InlineSelect.tsx';

const address = z.object({ state: z.enum(['', ...letterStates]).catch('') });
const choices = [
  { value: '', text: 'all' },
  ...letterStates.map((value) => ({ value, text: letterStateTitles[value] })),
] as const;

/** Letters to customers whose units come due: what to write today, and what became of each. */
export function RemindersPage() {
  const [{ state }, setAddress] = useAddress(address);
  return (
    <div className="stack">
      <section className="sheet" aria-label="Settings">
        <ReminderSettings />
      </section>
      <section className="sheet stack" aria-labelledby="due-letters">
        <h2 id="due-letters">Due today</h2>
        <DueLetters />
      </section>
      <section className="sheet stack" aria-labelledby="letter-log">
        <h2 id="letter-log">Log</h2>
        <LetterLog
          state={state}
          tools={
            <InlineSelect
              label="Stands at"
              value={state}
              onChange={(value) => setAddress({ state: value })}
              choices={choices}
              isRequired
            />
          }
        />
      </section>
    </div>
  );
}
