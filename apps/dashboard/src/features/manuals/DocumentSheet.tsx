import { documentOperations } from '@hubwright/contracts/manuals/document-operations';
import { documentKindTitles } from '@hubwright/contracts/manuals/words';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { DateText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { CheckDocument } from './check-document.tsx';
import { IssueMark } from './DocumentTable.tsx';
import { DocumentModels } from './document-models.tsx';
import { currentIssue, type WorkDocument } from './documents.ts';
import { IssueDocument } from './issue-document.tsx';
import { WithdrawDocument } from './withdraw-document.tsx';

/** One document opened: what each issue changed, newest first, who found it current, and the way to enter the next. */
export function DocumentSheet({ document, signer }: { document: WorkDocument; signer: Signer }) {
  const mayIssue = useMay(documentOperations.issueDocument) && document.withdrawnOn === null;
  const mayCheck = useMay(documentOperations.checkDocument);
  const [asked, setAsked] = useState<'issue' | 'models' | 'withdraw' | 'check'>();
  const close = () => setAsked(undefined);
  const current = currentIssue(document);
  return (
    <section className="sheet stack" aria-label={document.number}>
      <div>
        <h2>
          <span className="code">{document.number}</span> {document.title}
        </h2>
        <p className="soft">
          {documentKindTitles[document.kind]}, {document.issuer}, for{' '}
          {document.models.map(({ designation }) => designation).join(', ')}
        </p>
        {document.withdrawnOn ? (
          <p>
            Withdrawn <DateText date={document.withdrawnOn} />
          </p>
        ) : null}
      </div>
      <div className="row">
        {mayCheck && current ? <Button onPress={() => setAsked('check')}>Check currency</Button> : null}
        {mayIssue ? (
          <>
            <Button onPress={() => setAsked('issue')}>Enter a newer issue</Button>
            <Button weight="quiet" onPress={() => setAsked('models')}>
              Change its models
            </Button>
            <Button weight="quiet" onPress={() => setAsked('withdraw')}>
              Withdraw
            </Button>
          </>
        ) : null}
      </div>
      <h3>Issues</h3>
      <ul className="lines">
        {document.issues.map((issue) => (
          <li key={issue.id}>
            <span>
              <strong>{issue.issue}</strong>{' '}
              <span className="soft">
                of <DateText date={issue.issuedOn} />
              </span>
              <br />
              {issue.summary}
            </span>
            <span>
              <IssueMark issue={issue} />
              {issue.currencyCheckedBy ? <span className="small soft"> {issue.currencyCheckedBy}</span> : null}
            </span>
          </li>
        ))}
      </ul>
      {asked === 'issue' ? <IssueDocument document={document} onClose={close} /> : null}
      {asked === 'models' ? <DocumentModels document={document} onClose={close} /> : null}
      {asked === 'withdraw' ? <WithdrawDocument document={document} onClose={close} /> : null}
      {asked === 'check' && current ? (
        <CheckDocument number={document.number} issue={current} signer={signer} onClose={close} />
      ) : null}
    </section>
  );
}
