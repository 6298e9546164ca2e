import { useQuery } from '@tanstack/react-query';
import { type ReactNode, useState } from 'react';
import { Amount, DateText, DueText, InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { PricedSheet } from './PricedSheet.tsx';
import { documentAddress, kindWords, type Quote, type QuoteRow, quoteMarks, quoteQuery } from './quotes.ts';

function Chasers({ quote }: { quote: Quote }) {
  if (quote.chasers.length === 0) return null;
  return (
    <ul className="lines small" aria-label={`Reminders of ${quote.number}`}>
      {quote.chasers.map((chaser) => (
        <li key={chaser.id}>
          <span>
            Reminder for <DateText date={chaser.dueOn} />
            {chaser.note ? `: ${chaser.note}` : ''}
          </span>
          {chaser.sentAt ? (
            <StateMark state="passed" word="done" />
          ) : (
            <StateMark state={chaser.overdue ? 'stop' : 'open'} word={chaser.overdue ? 'due' : 'to come'} />
          )}
        </li>
      ))}
    </ul>
  );
}

function Opened({ quoteId }: { quoteId: string }) {
  const quote = useQuery(quoteQuery(quoteId)).data;
  if (!quote) return <Skeleton lines={4} />;
  return (
    <>
      <PricedSheet of={quote} caption={`Lines of ${quote.number}`} />
      <Chasers quote={quote} />
      {quote.decisionNote ? <p className="small">Said: {quote.decisionNote}</p> : null}
    </>
  );
}

/** One quote: its amount, where it stands, its PDF; lines and reminders on demand. */
export function QuoteCard({ quote, actions }: { quote: QuoteRow; actions: ReactNode }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <article className="stack" aria-label={quote.number}>
      <div className="row between">
        <p>
          <strong>{kindWords[quote.kind]}</strong> <span className="code">{quote.number}</span>{' '}
          <StateMark {...quoteMarks[quote.state]} />
        </p>
        <span className="figure">
          <Amount minor={quote.totalMinor} currency={quote.currency} />
        </span>
      </div>
      <p className="small soft">
        {quote.sentAt ? (
          <>
            Sent <InstantText instant={quote.sentAt} />,{' '}
          </>
        ) : null}
        valid until <DueText date={quote.validUntil} />
        {quote.decidedByName ? `; answered by ${quote.decidedByName}` : ''}
        {quote.capMinor === null ? null : (
          <>
            ; evaluation up to <Amount minor={quote.capMinor} currency={quote.currency} />
          </>
        )}
      </p>
      <div className="row">
        {actions}
        {quote.sentAt ? (
          <a href={documentAddress(quote.id)} target="_blank" rel="noreferrer">
            PDF<span className="only-heard"> of {quote.number}</span>
          </a>
        ) : null}
        <Button weight="quiet" onPress={() => setOpen(!isOpen)} aria-expanded={isOpen}>
          {isOpen ? 'Hide the lines' : 'Show the lines'}
        </Button>
      </div>
      {isOpen ? <Opened quoteId={quote.id} /> : null}
    </article>
  );
}
