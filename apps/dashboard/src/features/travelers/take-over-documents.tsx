import { documentKindTitles } from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import { documentSetOperations } from '@hubwright/contracts/work-orders/document-set-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { countOf } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import { documentSetQuery } from './DocumentSet.tsx';
import styles from './differences.module.css';

type Difference = Reply<typeof documentSetOperations.workOrderDocuments>['differences'][number];

export interface TakeOverProps {
  workOrder: { id: string; number: string; version: number };
  mayTakeOver: boolean;
  signer: Signer;
}

function wordsOf({ before, after }: Difference): string {
  if (before === null) return `new: ${after}`;
  return after === null ? `${before} is no longer in force` : `${before}, now ${after}`;
}

function Changed({ of }: { of: Difference }) {
  return (
    <li>
      <span>
        <strong className="code">{of.number}</strong> {of.title}{' '}
        <span className="soft">{documentKindTitles[of.kind]}</span>
        {of.says.map((sentence) => (
          <span key={sentence} className={styles.follows}>
            {sentence}
          </span>
        ))}
      </span>
      <span>{wordsOf(of)}</span>
    </li>
  );
}

/** Shown when a paper this work goes by has changed: what each issue says it changed, and the inspector's signature to go on. */
export function TakeOverDocuments({ workOrder, mayTakeOver, signer }: TakeOverProps) {
  const differences = useQuery(documentSetQuery(workOrder.id)).data?.differences ?? [];
  const [isSigning, setSigning] = useState(false);
  if (differences.length === 0) return null;
  const list = (
    <ul className="lines">
      {differences.map((each) => (
        <Changed key={`${each.kind} ${each.number}`} of={each} />
      ))}
    </ul>
  );
  return (
    <section className={`sheet ${styles.panel}`} aria-label="Documents have changed">
      <div className="stack">
        <div role="alert" className="stack tight">
          <StateMark state="hold" word="work stands still" />
          <p>
            {countOf(differences.length, 'document')} this work goes by changed. An inspector reads what before anyone
            signs on.
          </p>
        </div>
        {list}
        {mayTakeOver ? (
          <div className="row">
            <Button weight="next" onPress={() => setSigning(true)}>
              Go on by the current issues
            </Button>
          </div>
        ) : (
          <p className="soft">An inspector takes them over here.</p>
        )}
        {isSigning ? (
          <SignCommand
            op={documentSetOperations.takeOverDocuments}
            input={{ workOrderId: workOrder.id }}
            version={workOrder.version}
            signer={signer}
            onClose={() => setSigning(false)}
            onSigned={() => {
              say(`${workOrder.number} goes by the current issues.`);
              setSigning(false);
            }}
          >
            {list}
          </SignCommand>
        ) : null}
      </div>
    </section>
  );
}
