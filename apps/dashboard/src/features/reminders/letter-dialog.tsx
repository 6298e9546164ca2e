import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { useQuery } from '@tanstack/react-query';
import { addressOf } from '../../api/address.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import styles from './reminders.module.css';
import { type DueLetter, previewQuery } from './reminders.ts';

interface LetterDialogProps {
  letter: DueLetter;
  /** Missing where this person may not send. */
  onSend: (() => void) | undefined;
  onClose: () => void;
}

/** The letter as the customer would read it, before anything is sent. */
export function LetterDialog({ letter, onSend, onClose }: LetterDialogProps) {
  const { customer, heldBecause } = letter;
  const preview = useQuery(previewQuery(customer.id));
  return (
    <Dialog title={`Letter to ${customer.name}`} isOpen onClose={onClose}>
      <div className="stack">
        {preview.error ? <Refusal problem={preview.error} /> : null}
        {preview.data ? (
          <>
            <p>
              <strong>{preview.data.subject}</strong>
              {preview.data.to.email ? <span className="soft"> to {preview.data.to.email}</span> : null}
            </p>
            {/* It scrolls, so the keyboard must reach it. */}
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls is reached by keys */}
            <pre className={styles.letter} tabIndex={0}>
              {preview.data.text}
            </pre>
          </>
        ) : (
          <Skeleton lines={8} />
        )}
        {heldBecause === null ? null : <p role="note">{heldBecause}</p>}
        <div className="row actions">
          {onSend && heldBecause === null ? (
            <Button weight="next" onPress={onSend}>
              Write this letter
            </Button>
          ) : null}
          <LinkButton
            href={addressOf(reminderOperations.previewLetterPdf, { customerId: customer.id })}
            target="_blank"
          >
            See it on paper
          </LinkButton>
        </div>
      </div>
    </Dialog>
  );
}
