import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { ApproveQuote } from './approve-quote.tsx';
import { DeclineQuote } from './decline-quote.tsx';
import { isOut, type QuoteRow, quoteQuery } from './quotes.ts';
import { RecordSilence } from './record-silence.tsx';
import { SendChaser } from './send-chaser.tsx';
import { SendQuote } from './send-quote.tsx';

type Asked = 'send' | 'approve' | 'decline' | 'silence' | 'chaser';

/** What can be done with a quote as it stands: send a draft, record the answer, remind, record silence. */
export function QuoteActions({ quote }: { quote: QuoteRow }) {
  const [asked, setAsked] = useState<Asked>();
  const chasers = useQuery({ ...quoteQuery(quote.id), enabled: quote.state === 'sent' }).data?.chasers ?? [];
  const chaser = chasers.find((each) => each.sentAt === null);
  const close = () => setAsked(undefined);
  const button = (id: Asked, text: string, weight?: 'next') => (
    <Button onPress={() => setAsked(id)} {...(weight ? { weight } : {})}>
      {text}
      <span className="only-heard"> ({quote.number})</span>
    </Button>
  );
  return (
    <>
      {quote.state === 'draft' ? button('send', 'Look it over and send', 'next') : null}
      {isOut(quote) ? (
        <>
          {button('approve', 'They said yes', 'next')}
          {button('decline', 'They said no')}
        </>
      ) : null}
      {chaser ? button('chaser', chaser.overdue ? 'Remind them today' : 'They were reminded') : null}
      {quote.state === 'sent' && chasers.length > 0 && !chaser ? button('silence', 'No answer came') : null}
      {asked === 'send' ? <SendQuote quoteId={quote.id} onClose={close} /> : null}
      {asked === 'approve' ? <ApproveQuote quote={quote} onClose={close} /> : null}
      {asked === 'decline' ? <DeclineQuote quote={quote} onClose={close} /> : null}
      {asked === 'silence' ? <RecordSilence quote={quote} onClose={close} /> : null}
      {asked === 'chaser' && chaser ? (
        <SendChaser chaserId={chaser.id} quoteNumber={quote.number} onClose={close} />
      ) : null}
    </>
  );
}
