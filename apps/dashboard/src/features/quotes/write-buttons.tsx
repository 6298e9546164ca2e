import type { QuoteKind } from '@hubwright/contracts/quotes/operations';
import { useState } from 'react';
import { Button } from '../../ui/Button.tsx';
import { isOwed, quotable } from './quotable.ts';
import { theKind } from './quotes.ts';
import { SendQuote } from './send-quote.tsx';
import { WriteQuote } from './write-quote.tsx';

type Order = { id: string; number: string } & Parameters<typeof quotable>[0];

/** Write, look it over, send: three touches from the work order to a quote that is out. */
export function WriteButtons({ order, onlyOwed }: { order: Order; onlyOwed?: boolean }) {
  const [kind, setKind] = useState<QuoteKind>();
  const [writtenId, setWrittenId] = useState<string>();
  const kinds = quotable(order).filter((each) => !onlyOwed || isOwed(order, each));
  const written = (quoteId: string) => {
    setKind(undefined);
    setWrittenId(quoteId);
  };
  return (
    <>
      {kinds.map((each) => (
        <Button key={each} weight={isOwed(order, each) ? 'next' : 'plain'} onPress={() => setKind(each)}>
          {isOwed(order, each) ? `Write ${theKind[each]}` : `Write ${theKind[each]} again`}
        </Button>
      ))}
      {kind ? <WriteQuote order={order} kind={kind} onWritten={written} onClose={() => setKind(undefined)} /> : null}
      {writtenId ? <SendQuote quoteId={writtenId} onClose={() => setWrittenId(undefined)} /> : null}
    </>
  );
}
