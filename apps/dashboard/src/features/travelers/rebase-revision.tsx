import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { countOf } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import { DifferenceList } from './DifferenceList.tsx';
import styles from './differences.module.css';

export interface RebaseProps {
  workOrder: { id: string; number: string; version: number };
  mayRebase: boolean;
  signer: Signer;
}

/** Shown when the revision this work goes by was superseded: what the new one changes, line by line, and the inspector's signature to go on. */
export function RebaseRevision({ workOrder, mayRebase, signer }: RebaseProps) {
  const answer = useQuery(queryFor(travelerOperations.revisionDifferences, { workOrderId: workOrder.id })).data;
  const [isSigning, setSigning] = useState(false);
  if (!answer?.superseded) return null;
  return (
    <section className={`sheet ${styles.panel}`} aria-label="The manual was revised">
      <div className="stack">
        <div role="alert" className="stack tight">
          <StateMark state="hold" word="work stands still" />
          <p>
            Revision {answer.from.revision} was superseded by {answer.to.revision}. An inspector compares both before
            anyone signs on.
          </p>
        </div>
        <DifferenceList
          differences={answer.differences}
          from={`Revision ${answer.from.revision}`}
          to={`Revision ${answer.to.revision}`}
        />
        {answer.reopensBuild ? (
          <p>The build was closed; it opens again, and is closed again when this is done.</p>
        ) : null}
        {mayRebase ? (
          <div className="row">
            <Button weight="next" onPress={() => setSigning(true)}>
              Go on by revision {answer.to.revision}
            </Button>
          </div>
        ) : (
          <p className="soft">An inspector goes over to revision {answer.to.revision} here.</p>
        )}
        {isSigning ? (
          <SignCommand
            op={travelerOperations.rebaseRevision}
            input={{ workOrderId: workOrder.id }}
            version={workOrder.version}
            signer={signer}
            onClose={() => setSigning(false)}
            onSigned={() => {
              say(`${workOrder.number} goes on by revision ${answer.to.revision}.`);
              setSigning(false);
            }}
          >
            <p>
              {workOrder.number}: revision {answer.from.revision} to {answer.to.revision},{' '}
              {countOf(answer.differences.length, 'difference')}
            </p>
          </SignCommand>
        ) : null}
      </div>
    </section>
  );
}
