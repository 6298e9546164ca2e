import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useMay, useMe } from '../../features/people/me.ts';
import { ApproveRelease } from '../../features/releases/approve-release.tsx';
import { ChecklistSheet } from '../../features/releases/ChecklistSheet.tsx';
import { FactsShown } from '../../features/releases/FactsShown.tsx';
import { checklistQuery, pdfAddress, releasesOf } from '../../features/releases/releases.ts';
import { InstantText } from '../../format/values.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Link } from '../../ui/Link.tsx';
import styles from './inspection.module.css';

export function ReleasePage() {
  const { workOrderId = '' } = useParams({ strict: false }) as { workOrderId?: string };
  const checklist = useSuspenseQuery(checklistQuery(workOrderId)).data;
  const { rows: releases } = useSuspenseQuery(releasesOf(workOrderId)).data;
  const me = useMe();
  const mayApprove = useMay(releaseOperations.approveRelease) && releases.length === 0;
  return (
    <>
      <ViewHead
        title={`Release of ${checklist.workOrder.number}`}
        question="What is still open, and may it be approved?"
      >
        <Link href={`/work-orders/${workOrderId}`}>{checklist.workOrder.number}</Link>
      </ViewHead>
      <div className={styles.beside}>
        <section className="sheet stack" aria-labelledby="open">
          <h2 id="open">Still open ({checklist.open.length})</h2>
          <ChecklistSheet checklist={checklist} />
        </section>
        <section className="sheet stack" aria-labelledby="record">
          <h2 id="record">The record</h2>
          <FactsShown checklist={checklist} />
          {releases.map((release) => (
            <p key={release.id}>
              <strong>{release.number}</strong>, {release.word}, approved by {release.approvedBy.displayName}{' '}
              <InstantText instant={release.releasedAt} />. <a href={pdfAddress(release.id)}>Open the archived PDF</a>
            </p>
          ))}
          {releases.length === 0 ? <ApproveRelease checklist={checklist} signer={me} mayApprove={mayApprove} /> : null}
        </section>
      </div>
    </>
  );
}
