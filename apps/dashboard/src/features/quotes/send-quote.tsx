import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { useQuery } from '@tanstack/react-query';
import { useCommand } from '../../api/command.ts';
import { formatDate } from '../../format/dates.ts';
import { DateText } from '../../format/values.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import { PricedSheet } from './PricedSheet.tsx';
import { documentAddress, kindWords, type Quote, quoteQuery } from './quotes.ts';

/** It is out: the PDF to hand over, and when the customer is reminded. */
function SentSheet({ quote, onClose }: { quote: Quote; onClose: () => void }) {
  return (
    <div className="stack" role="status">
      <StateMark state="passed" word={`${quote.number} is on record as sent`} />
      <p>
        Hand the PDF over or mail it: nothing is mailed from here. Reminders are dated{' '}
        {quote.chasers.map((chaser) => formatDate(chaser.dueOn)).join(', ') || 'nowhere'}.
      </p>
      <div className="row">
        <LinkButton href={documentAddress(quote.id)} weight="next" target="_blank">
          Open the PDF
        </LinkButton>
        <Button weight="quiet" onPress={onClose}>
          Done
        </Button>
      </div>
    </div>
  );
}

/** The written quote once more, then it goes out: its PDF is archived and the reminders are dated. */
export function SendQuote({ quoteId, onClose }: { quoteId: string; onClose: () => void }) {
  const quote = useQuery(quoteQuery(quoteId)).data;
  const send = useCommand(quoteOperations.sendQuote);
  const title = quote ? `${kindWords[quote.kind]} ${quote.number}` : 'Quote';
  return (
    <Dialog title={title} width="wide" isOpen onClose={onClose}>
      {!quote ? <Skeleton lines={6} /> : null}
      {quote && quote.state !== 'draft' ? <SentSheet quote={quote} onClose={onClose} /> : null}
      {quote?.state === 'draft' ? (
        <CommandForm
          problem={send.error}
          isPending={send.isPending}
          submit="Send it"
          onCancel={onClose}
          onSubmit={() =>
            send.mutate(
              { input: { quoteId }, version: quote.version },
              { onSuccess: () => say(`${quote.number} is sent.`) },
            )
          }
        >
          <PricedSheet of={quote} caption={`Lines of ${quote.number}`} />
          <p>
            Valid until <DateText date={quote.validUntil} />.
          </p>
        </CommandForm>
      ) : null}
    </Dialog>
  );
}
