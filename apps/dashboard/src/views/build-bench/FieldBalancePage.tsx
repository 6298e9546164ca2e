import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import type { FieldRun, StandingWeight } from '@hubwright/contracts/field-balance/shapes';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useMay, useMe } from '../../api/me.ts';
import { AnswerSheet } from '../../features/field-balance/AnswerSheet.tsx';
import { BalanceFacts, StandingList } from '../../features/field-balance/BalanceFacts.tsx';
import { BalancePictures } from '../../features/field-balance/BalancePictures.tsx';
import { balanceQuery, type FieldBalance, stateMarks } from '../../features/field-balance/field-balance.ts';
import { AbandonBalance, ReleaseBalance, SignBalance } from '../../features/field-balance/finish-balance.tsx';
import { FitWeights } from '../../features/field-balance/fit-weights.tsx';
import { type Doing, NextStep } from '../../features/field-balance/NextStep.tsx';
import { RunTable } from '../../features/field-balance/RunTable.tsx';
import { RecordRun } from '../../features/field-balance/record-run.tsx';
import { SignSetUp } from '../../features/field-balance/sign-set-up.tsx';
import { TakeOffWeights } from '../../features/field-balance/take-off-weights.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { Caution } from '../../ui/Caution.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './bench.module.css';

const over = ['balanced', 'released', 'abandoned'];

function DialogOf(props: { balance: FieldBalance; doing: Doing; signer: Signer; onClose: () => void }) {
  const { doing, ...shared } = props;
  switch (doing) {
    case 'set-up':
      return <SignSetUp {...shared} />;
    case 'fit':
      return <FitWeights {...shared} />;
    case 'sign':
      return <SignBalance {...shared} />;
    case 'release':
      return <ReleaseBalance {...shared} />;
    case 'abandon':
      return <AbandonBalance {...shared} />;
    default:
      return <RecordRun {...shared} kind={doing} />;
  }
}

function Head({ balance }: { balance: FieldBalance }) {
  const { aircraft, propeller, customer, state } = balance;
  return (
    <ViewHead
      title={`Balance ${balance.number}`}
      question={`${aircraft.registration}, ${propeller.model} ${propeller.serial}: ${over.includes(state) ? 'what was done?' : 'what does the next run need?'}`}
    >
      <div className="row">
        <StateMark {...stateMarks[state]} />
        <Link href={`/units/${propeller.id}`}>{propeller.serial}</Link>
        <span className="soft">{customer.name}</span>
        {balance.released ? (
          <LinkButton href={addressOf(op.fieldBalancePdf, { fieldBalanceId: balance.id })} target="_blank">
            Print the record
          </LinkButton>
        ) : null}
      </div>
    </ViewHead>
  );
}

/** What is left of an order whose records went: nothing that could be taken for an empty propeller. */
function Purged({ balance }: { balance: FieldBalance }) {
  return (
    <>
      <Head balance={balance} />
      <div className="sheet">
        <EmptyState title="The records of this balance were destroyed">
          Their time had run; the signed proof is listed under record keeping. What stands on the propeller is not known
          here: look at it, and in the aircraft’s log.
        </EmptyState>
      </div>
    </>
  );
}

/** One balance on the aircraft: what is next, what was read, what it asks for, and where weights stand. */
export function FieldBalancePage() {
  const { fieldBalanceId = '' } = useParams({ strict: false }) as { fieldBalanceId?: string };
  const balance = useSuspenseQuery(balanceQuery(fieldBalanceId)).data;
  const me = useMe();
  const mayDo = useMay(op.recordFieldRun) && !over.includes(balance.state);
  const [doing, setDoing] = useState<Doing>();
  const [wrong, setWrong] = useState<FieldRun>();
  const [taken, setTaken] = useState<StandingWeight>();
  if (balance.purged) return <Purged balance={balance} />;
  return (
    <>
      <Head balance={balance} />
      <div className={styles.beside}>
        <div className="sheet stack">
          {over.includes(balance.state) ? null : (
            <Caution>
              A running propeller kills. Tie-down, clear area and signals as the current approved manual and the
              procedure say; people licensed for it run the engine.
            </Caution>
          )}
          <NextStep balance={balance} onDo={setDoing} />
          {over.includes(balance.state) ? null : <AnswerSheet balance={balance} />}
          <h2>Runs</h2>
          <RunTable balance={balance} onCorrect={mayDo ? setWrong : undefined} />
        </div>
        <div className="sheet stack">
          <BalancePictures balance={balance} />
          <h2>Dynamic weights standing</h2>
          <StandingList balance={balance} onTakeOff={mayDo ? setTaken : undefined} />
          <BalanceFacts balance={balance} />
        </div>
      </div>
      {doing ? <DialogOf balance={balance} doing={doing} signer={me} onClose={() => setDoing(undefined)} /> : null}
      {wrong ? (
        <RecordRun balance={balance} kind={wrong.kind} wrong={wrong} onClose={() => setWrong(undefined)} />
      ) : null}
      {taken ? <TakeOffWeights balance={balance} weight={taken} onClose={() => setTaken(undefined)} /> : null}
    </>
  );
}
