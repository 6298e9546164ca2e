import { useQuery } from '@tanstack/react-query';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { QuoteCard } from './QuoteCard.tsx';
import { QuoteActions } from './quote-actions.tsx';
import { quotesOf } from './quotes.ts';

/** Every quote of a work order, newest first; `open` leaves only those somebody has to act on. */
export function QuotesOfOrder(props: { workOrderId: string; mayAct: boolean; onlyOpen?: boolean }) {
  const quotes = useQuery(quotesOf(props.workOrderId)).data?.rows;
  if (!quotes) return <Skeleton lines={3} />;
  const shown = props.onlyOpen ? quotes.filter((quote) => ['draft', 'sent', 'silent'].includes(quote.state)) : quotes;
  if (shown.length === 0)
    return props.onlyOpen ? null : (
      <EmptyState title="Nothing was quoted yet">
        The estimate comes first; the firm quote follows inspection.
      </EmptyState>
    );
  return (
    <ul className="stack" style={{ listStyle: 'none' }}>
      {shown.map((quote) => (
        <li key={quote.id}>
          <QuoteCard quote={quote} actions={props.mayAct ? <QuoteActions quote={quote} /> : null} />
        </li>
      ))}
    </ul>
  );
}
