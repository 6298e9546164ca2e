import { expectedOperations } from '@hubwright/contracts/kits/expected-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { usePages } from '../../api/pages.ts';
import { ExpectedRates } from '../../features/kits/ExpectedRates.tsx';
import { ExpectedMonths, ExpectedUnits } from '../../features/kits/ExpectedTables.tsx';
import { expectedQuery } from '../../features/kits/expected-demand.ts';
import { UnreadUnits } from '../../features/kits/UnreadUnits.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

/** What is expected of a part for units that are not in work yet: by month, unit by unit, and by which records. */
export function ExpectedPage() {
  const { partId = '' } = useParams({ strict: false }) as { partId?: string };
  const expected = useSuspenseQuery(expectedQuery(partId)).data;
  const { part } = expected;
  const units = usePages(expectedOperations.expectedUnits, { partId });
  return (
    <>
      <ViewHead
        title={`Expected of ${part.number}`}
        question={`How much ${part.number} ${part.description} will units ask for that are not in work yet?`}
      >
        <LinkButton href={`/parts/${part.id}`}>Stock and use of {part.number}</LinkButton>
      </ViewHead>
      <div className="stack">
        <section className="sheet stack">
          <p>{expected.summary}</p>
          <p className="small soft">
            Expected, not firm: it is served after every open kit and makes none of them short.
          </p>
          <ExpectedMonths of={expected} />
        </section>
        <section className="sheet stack">
          <h2>Units behind it</h2>
          <PagesFrame of={units}>
            <ExpectedUnits part={part} rows={units.rows} />
          </PagesFrame>
        </section>
        <UnreadUnits of={expected} />
        <section className="sheet stack">
          <h2>How the odds are told</h2>
          <ExpectedRates of={expected} />
        </section>
      </div>
    </>
  );
}
