import { scopeTitles } from '@hubwright/contracts/manuals/words';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useMay, useMe } from '../../api/me.ts';
import { ApproveRelease } from '../../features/releases/approve-release.tsx';
import { ChecklistSheet } from '../../features/releases/ChecklistSheet.tsx';
import { FactsShown } from '../../features/releases/FactsShown.tsx';
import { ReleaseList } from '../../features/releases/ReleaseList.tsx';
import { checklistQuery, releasesOf } from '../../features/releases/releases.ts';
import { unitWords } from '../../features/work-orders/order-words.ts';
import { workOrderQuery } from '../../features/work-orders/work-orders.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './inspection.module.css';

export function ReleasePage() {
  const { workOrderId = '' } = useParams({ strict: false }) as { workOrderId?: string };
  const checklist = useSuspenseQuery(checklistQuery(workOrderId)).data;
  const { rows: releases } = useSuspenseQuery(releasesOf(workOrderId)).data;
  const order = useSuspenseQuery(workOrderQuery(workOrderId)).data;
  const me = useMe();
  const isReleased = releases.length > 0;
  const mayApprove = useMay(releaseOperations.approveRelease) && !isReleased;
  return (
    <>
      <ViewHead
        title={`Release of ${checklist.workOrder.number}`}
        question="What is still open, and may it be approved?"
      >
        <span className="row">
          <Link href={`/work-orders/${workOrderId}`}>{checklist.workOrder.number}</Link>
          <span className="soft">
            {unitWords(order.unit)}, {order.customer.name}, {scopeTitles[order.scope].toLowerCase()}
          </span>
        </span>
      </ViewHead>
      <div className={styles.beside}>
        <section className="sheet stack" aria-labelledby="open">
          <h2 id="open">{isReleased ? 'Approved' : `Still open (${checklist.open.length})`}</h2>
          {isReleased ? (
            <>
              <p>
                <StateMark state="signed" word="approved for return to service" />
              </p>
              <ReleaseList releases={releases} signer={me} />
            </>
          ) : (
            <ChecklistSheet checklist={checklist} />
          )}
        </section>
        <section className="sheet stack" aria-labelledby="record">
          <h2 id="record">The record</h2>
          <FactsShown checklist={checklist} isReleased={isReleased} />
          {isReleased ? null : <ApproveRelease checklist={checklist} signer={me} mayApprove={mayApprove} />}
        </section>
      </div>
    </>
  );
}
