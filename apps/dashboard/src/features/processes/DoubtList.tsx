import { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { InstantText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { DecideThenSign } from '../../ui/DecideThenSign.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Doubt } from './equipment.ts';

const decisionWords = {
  stands: 'What was done stands',
  'finding-raised': 'A finding on its traveler carries what is done',
  'customer-told': 'It has left; its customer was told',
} as const;
type Decision = keyof typeof decisionWords;

function AnswerDoubt({ doubt, signer, onClose }: { doubt: Doubt; signer: Signer; onClose: () => void }) {
  const possible: Decision[] = doubt.workOrder.releasedAt ? ['stands', 'customer-told'] : ['stands', 'finding-raised'];
  const shown = (
    <p>
      {doubt.workOrder.number}, {doubt.traveler.position}: {doubt.step}, in or with {doubt.equipment.code}, where{' '}
      {doubt.quantity} was then read {doubt.value}.
    </p>
  );
  return (
    <DecideThenSign
      title="What does it mean for this part?"
      label="Answer"
      choices={possible.map((value) => ({ value, text: decisionWords[value] }))}
      onClose={onClose}
      signing={(answer, back) => (
        <SignCommand
          op={equipmentOperations.answerDoubt}
          input={{ doubtId: doubt.id, ...answer }}
          version={doubt.version}
          signer={signer}
          onClose={back}
          onWrongInput={back}
          onSigned={() => {
            say(`Answered for ${doubt.traveler.number}.`);
            onClose();
          }}
        >
          {shown}
          <p>
            {decisionWords[answer.decision]}: {answer.reason}
          </p>
        </SignCommand>
      )}
    >
      {shown}
    </DecideThenSign>
  );
}

/** Parts that went through between the last good result and a bad one, each to be answered for by an inspector. */
export function DoubtList({ show, signer }: { show: 'open' | 'all'; signer: Signer }) {
  const doubts = usePages(equipmentOperations.listDoubts, { show });
  const mayAnswer = useMay(equipmentOperations.answerDoubt);
  const [answering, setAnswering] = useState<Doubt>();
  return (
    <PagesFrame of={doubts}>
      {doubts.rows.length === 0 ? (
        <EmptyState title="No part waits for an answer">
          A result out of its limits names every part since the last good one here.
        </EmptyState>
      ) : null}
      <ul className="lines">
        {doubts.rows.map((doubt) => (
          <li key={doubt.id}>
            <span>
              <Link href={`/travelers/${doubt.traveler.id}`}>{doubt.traveler.number}</Link>{' '}
              <strong>{doubt.traveler.position}</strong> of {doubt.workOrder.number}, {doubt.customer}: {doubt.step},
              signed by {doubt.person} <InstantText instant={doubt.performedAt} />
              <br />
              <span className="soft small">
                {doubt.equipment.code}: {doubt.quantity} read {doubt.value} <InstantText instant={doubt.foundAt} />
                {doubt.decision ? `. ${decisionWords[doubt.decision]}: ${doubt.reason} (${doubt.decidedBy})` : ''}
              </span>
            </span>
            <span className="row">
              <StateMark
                state={doubt.decision ? 'passed' : doubt.workOrder.releasedAt ? 'stop' : 'hold'}
                word={doubt.decision ? 'answered' : doubt.workOrder.releasedAt ? 'released already' : 'nobody answered'}
              />
              {mayAnswer && doubt.decision === null ? (
                <Button onPress={() => setAnswering(doubt)} aria-label={`Answer for ${doubt.traveler.number}`}>
                  Answer
                </Button>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      {answering ? <AnswerDoubt doubt={answering} signer={signer} onClose={() => setAnswering(undefined)} /> : null}
    </PagesFrame>
  );
}
