import { valueOperations } from '@hubwright/contracts/inventory/value-operations';
import { useParams } from '@tanstack/react-router';
import { usePages } from '../../api/pages.ts';
import { AverageTable } from '../../features/inventory/AverageTable.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

/** What the price of one piece was computed from. */
export function AveragePage() {
  const { partId = '' } = useParams({ strict: false }) as { partId?: string };
  const steps = usePages(valueOperations.partAverage, { partId });
  const { part = '', currency = 'USD', isFollowed = true } = steps.first ?? {};
  return (
    <>
      <ViewHead title={`Average price of ${part}`} question={`How did what each ${part} is worth come about?`}>
        <LinkButton href={`/parts/${partId}`}>Stock and use of {part}</LinkButton>
      </ViewHead>
      <div className="sheet stack">
        <p>
          Each receipt makes a new average of what was held and what came; what goes to the work, is scrapped or counted
          moves at the average of its moment. The newest stands on top. Only the shop’s own parts count.
        </p>
        {isFollowed ? null : (
          <StateMark
            state="note"
            word="A lot changed its owner on the way: there is no average, and the value is by lot."
          />
        )}
        <PagesFrame of={steps}>
          <AverageTable part={part} currency={currency} rows={steps.rows} />
        </PagesFrame>
      </div>
    </>
  );
}
