import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { letterStateTitles } from '@hubwright/contracts/reminders/shapes';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import { plainDates } from '../../format/plain-dates.ts';
import { InstantText } from '../../format/values.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { LetterActions } from './letter-actions.tsx';
import styles from './reminders.module.css';
import { type Letter, shapeOf, unitsLine } from './reminders.ts';

/** One letter with every step that is on record, and what a person may do with it now. */
export function LetterRecord({ letter, onClose }: { letter: Letter; onClose: () => void }) {
  const mayAct = useMay(reminderOperations.markLetterPosted);
  const { number, customer, state, to, units, events, messageId, way } = letter;
  return (
    <Dialog title={`${number} to ${customer.name}`} isOpen onClose={onClose}>
      <div className="stack">
        <p>
          <StateMark state={shapeOf[state]} word={letterStateTitles[state]} />
        </p>
        <p>{unitsLine(units)}</p>
        <p className="small soft">
          {[to.name, way === 'e-mail' ? to.email : to.address].filter(Boolean).join(', ') || 'No address is on record.'}
        </p>
        <ol className={styles.log}>
          {events.map((event) => (
            <li key={`${event.at} ${event.what}`}>
              <strong>{event.what}</strong>, <InstantText instant={event.at} />, {event.by}. {plainDates(event.detail)}
            </li>
          ))}
        </ol>
        {way === 'e-mail' ? <p className={`small soft ${styles.long}`}>Message-ID {messageId}</p> : null}
        <p>
          <LinkButton href={addressOf(reminderOperations.letterPdf, { letterId: letter.id })} target="_blank">
            Open the paper
          </LinkButton>
        </p>
        {mayAct ? <LetterActions letter={letter} /> : null}
      </div>
    </Dialog>
  );
}
