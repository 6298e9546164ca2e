import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { CurrencyMark } from './CurrencyMark.tsx';
import { IssueRevision } from './issue-revision.tsx';
import { KitListDrafts } from './kit-list-drafts.tsx';
import { currentOf, type Manual } from './manuals.ts';

/** One manual opened: its revisions, newest first, and the way to enter the next. */
export function ManualSheet({ manual }: { manual: Manual }) {
  const mayIssue = useMay(manualOperations.issueRevision);
  const [isIssuing, setIssuing] = useState(false);
  return (
    <section className="sheet stack" aria-label={manual.number}>
      <div>
        <h2>
          <span className="code">{manual.number}</span> {manual.title}
        </h2>
        <p className="soft">
          {manual.maker}, {manual.kind.replaceAll('-', ' ')}
        </p>
      </div>
      <div className="row between">
        <h3>Revisions</h3>
        {mayIssue ? (
          <Button weight={currentOf(manual) ? 'plain' : 'next'} onPress={() => setIssuing(true)}>
            Enter a revision
          </Button>
        ) : null}
      </div>
      {manual.revisions.length === 0 ? (
        <EmptyState title="No revision is entered">No work can go by this manual yet.</EmptyState>
      ) : (
        <ul className="lines">
          {manual.revisions.map((each) => (
            <li key={each.id}>
              <span>
                <Link href={`/manual-revisions/${each.id}`}>Revision {each.revision}</Link>{' '}
                <span className="soft">
                  issued <DateText date={each.issuedOn} />
                </span>
              </span>
              <CurrencyMark revision={each} />
            </li>
          ))}
        </ul>
      )}
      <KitListDrafts manual={manual} />
      {isIssuing ? <IssueRevision manual={manual} onClose={() => setIssuing(false)} /> : null}
    </section>
  );
}
