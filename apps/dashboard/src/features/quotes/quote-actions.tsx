import { useQuery } from '@tanstack/react-query';
import { Button } from '../../ui/Button.tsx';
import { ApproveQuote } from './approve-quote.tsx';
import { DeclineQuote } from './decline-quote.tsx';
import { isOut, type QuoteRow, quoteQuery } from './quotes.ts';
import { RecordSilence } from './record-silence.tsx';
import { SendChaser } from './send-chaser.tsx';
import { SendQuote } from './send-quote.tsx';

/** What somebody wants to do with which quote. */
export interface Asked {
  readonly what: 'send' | 'approve' | 'decline' | 'silence' | 'chaser';
  readonly quote: QuoteRow;
  readonly chaserId?: string;
}

/** What can be done with a quote as it stands: send a draft, record the answer, remind, record silence. */
export function QuoteButtons({ quote, onAsk }: { quote: QuoteRow; onAsk: (asked: Asked) => void }) {
  const chasers = useQuery({ ...quoteQuery(quote.id), enabled: quote.state === 'sent' }).data?.chasers ?? [];
  const chaser = chasers.find((each) => each.sentAt === null);
  const button = (asked: Omit<Asked, 'quote'>, text: string, weight?: 'next') => (
    <Button onPress={() => onAsk({ ...asked, quote })} {...(weight ? { weight } : {})}>
      {text}
      <span className="only-heard"> ({quote.number})</span>
    </Button>
  );
  return (
    <>
      {quote.state === 'draft' ? button({ what: 'send' }, 'Look it over and send', 'next') : null}
      {isOut(quote) ? button({ what: 'approve' }, 'They said yes', 'next') : null}
      {isOut(quote) ? button({ what: 'decline' }, 'They said no') : null}
      {chaser
        ? button({ what: 'chaser', chaserId: chaser.id }, chaser.overdue ? 'Remind them today' : 'They were reminded')
        : null}
      {quote.state === 'sent' && chasers.length > 0 && !chaser ? button({ what: 'silence' }, 'No answer came') : null}
    </>
  );
}

/** The dialog for it. It stands beside the list, since a quote that was answered may leave the list before the dialog is done. */
export function QuoteDialog({ asked, onClose }: { asked: Asked; onClose: () => void }) {
  const { what, quote, chaserId = '' } = asked;
  switch (what) {
    case 'send':
      return <SendQuote quoteId={quote.id} onClose={onClose} />;
    case 'approve':
      return <ApproveQuote quote={quote} onClose={onClose} />;
    case 'decline':
      return <DeclineQuote quote={quote} onClose={onClose} />;
    case 'silence':
      return <RecordSilence quote={quote} onClose={onClose} />;
    case 'chaser':
      return <SendChaser chaserId={chaserId} quoteNumber={quote.number} onClose={onClose} />;
  }
}
