import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { ExpectedRates } from '../../features/kits/ExpectedRates.tsx';
import { ExpectedMonths, ExpectedUnits } from '../../features/kits/ExpectedTables.tsx';
import { expectedQuery } from '../../features/kits/expected-demand.ts';
import { countOf } from '../../format/numbers.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';

/** What is expected of a part for units that are not in work yet: by month, unit by unit, and by which records. */
export function ExpectedPage() {
  const { partId = '' } = useParams({ strict: false }) as { partId?: string };
  const expected = useSuspenseQuery(expectedQuery(partId)).data;
  const { part, units, behind } = expected;
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
          {units > behind.length ? (
            <p className="small soft">
              The {behind.length} that count most of {countOf(units, 'unit')}.
            </p>
          ) : null}
          <ExpectedUnits of={expected} />
        </section>
        <section className="sheet stack">
          <h2>How the odds are told</h2>
          <ExpectedRates of={expected} />
        </section>
      </div>
    </>
  );
}
