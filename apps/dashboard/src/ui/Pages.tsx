import { createContext, type ReactNode, useContext } from 'react';
import type { Pages } from '../api/pages.ts';
import { Button } from './Button.tsx';
import { Refusal } from './Refusal.tsx';
import { Skeleton } from './Skeleton.tsx';

/** How a table within reads the rest of its list, when all of it shall leave as a file. */
interface Rest {
  readonly more: (() => void) | undefined;
  readonly isReading: boolean;
  readonly hasFailed: boolean;
}
const RestContext = createContext<Rest>({ more: undefined, isReading: false, hasFailed: false });

/** Nothing more is to be read where a table stands in no such frame. */
export const useRest = () => useContext(RestContext);

/** Around a list that is read page by page: what stands there while it is read, why it could not be, and how to read on. */
export function PagesFrame<Row>({ of, children }: { of: Pages<Row>; children: ReactNode }) {
  if (of.isFirst) return of.problem ? <Refusal problem={of.problem} /> : <Skeleton lines={6} />;
  return (
    <div className="stack">
      {of.problem ? <Refusal problem={of.problem} /> : null}
      <RestContext value={{ more: of.more, isReading: of.isReading, hasFailed: of.problem !== null }}>
        {children}
      </RestContext>
      {of.more ? (
        <div className="row">
          <Button onPress={of.more} isPending={of.isReading}>
            Show more
          </Button>
          <span className="soft small">The list goes on; search or filter to see less.</span>
        </div>
      ) : null}
    </div>
  );
}
