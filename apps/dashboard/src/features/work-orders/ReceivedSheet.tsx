import type { ReactNode } from 'react';
import { StateMark } from '../../ui/StateMark.tsx';
import { paperWords } from './order-words.ts';
import type { Received } from './receive-unit.tsx';

/** What booking in led to: the number for the tag, papers to ask for, and what else to ask. */
export function ReceivedSheet({ received, children }: { received: Received; children: ReactNode }) {
  return (
    <div className="stack" role="status">
      <p>
        <span className="figure">{received.number}</span>{' '}
        <span className="soft">is booked in: tag the box with it.</span>
      </p>
      {received.paperworkMissing.length > 0 ? (
        <StateMark
          state="hold"
          word={`ask for: ${received.paperworkMissing.map((paper) => paperWords[paper].toLowerCase()).join(', ')}`}
        />
      ) : null}
      {received.prompts.map((prompt) => (
        <p key={prompt}>
          <StateMark state="note" word={prompt} />
        </p>
      ))}
      <p className="soft">An inspector looks at it next; the estimate can be written meanwhile.</p>
      <div className="row">{children}</div>
    </div>
  );
}
