import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { QuoteCard } from './QuoteCard.tsx';
import { type Asked, QuoteButtons, QuoteDialog } from './quote-actions.tsx';
import { type QuoteRow, quotesOf } from './quotes.ts';

const open: readonly string[] = ['draft', 'sent', 'silent'];

function Cards(props: { quotes: readonly QuoteRow[]; onAsk: ((asked: Asked) => void) | undefined }) {
  const { quotes, onAsk } = props;
  return (
    <ul className="stack" style={{ listStyle: 'none' }}>
      {quotes.map((quote) => (
        <li key={quote.id}>
          <QuoteCard quote={quote} actions={onAsk ? <QuoteButtons quote={quote} onAsk={onAsk} /> : null} />
        </li>
      ))}
    </ul>
  );
}

/** Every quote of a work order, newest first; `onlyOpen` leaves those somebody has to act on. */
export function QuotesOfOrder(props: { workOrderId: string; mayAct: boolean; onlyOpen?: boolean }) {
  const quotes = useQuery(quotesOf(props.workOrderId)).data?.rows;
  const [asked, setAsked] = useState<Asked>();
  if (!quotes) return <Skeleton lines={3} />;
  const shown = props.onlyOpen ? quotes.filter((quote) => open.includes(quote.state)) : quotes;
  const newest = asked && { ...asked, quote: quotes.find(({ id }) => id === asked.quote.id) ?? asked.quote };
  return (
    <>
      {shown.length > 0 ? <Cards quotes={shown} onAsk={props.mayAct ? setAsked : undefined} /> : null}
      {quotes.length === 0 && !props.onlyOpen ? (
        <EmptyState title="Nothing was quoted yet">
          The estimate comes first; the firm quote follows inspection.
        </EmptyState>
      ) : null}
      {newest ? <QuoteDialog asked={newest} onClose={() => setAsked(undefined)} /> : null}
    </>
  );
}
