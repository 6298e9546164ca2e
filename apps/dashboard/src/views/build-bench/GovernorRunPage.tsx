import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import { EarlierTests } from '../../features/governor-tests/EarlierTests.tsx';
import { type Run, runMarks, runQuery, unitWord } from '../../features/governor-tests/governor.ts';
import { PointList } from '../../features/governor-tests/PointList.tsx';
import { RunBench } from '../../features/governor-tests/RunBench.tsx';
import { RunHistory } from '../../features/governor-tests/RunHistory.tsx';
import { DueText } from '../../format/values.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

/** What it is tested by, in two lines: the room below belongs to the points. */
function Facts({ run }: { run: Run }) {
  const { program, bench } = run;
  const { rotation, driveRatio, oil } = program.content;
  return (
    <p>
      <strong>{run.application}</strong>: {rotation}, drive ratio {driveRatio}
      <br />
      <span className="soft small">
        {program.revision.manual} rev. {program.revision.revision}, issue {program.issue}; oil {run.oil}, {oil.low} to{' '}
        {oil.high} {unitWord(oil.unit)}; {bench.tag}, good until <DueText date={bench.calibrationDueOn} />
        {run.acceptedBy ? '; readings are accepted inside the manual’s limits by the doubt of the bench' : ''}
        {run.supervisor ? `; ${run.startedBy.displayName} works under ${run.supervisor.displayName}` : ''}
      </span>
    </p>
  );
}

function Ended({ run }: { run: Run }) {
  const steps = `/travelers/${run.travelerId}?step=${run.stepId}`;
  const isSigned = run.step.state !== 'open';
  return (
    <div className="row">
      {run.reason ? <p>{run.reason}</p> : null}
      {run.state !== 'broken-off' && !isSigned ? (
        <LinkButton href={steps} weight="next">
          {run.state === 'passed' ? 'Sign the step with this run' : 'Sign the step as failed, with a finding'}
        </LinkButton>
      ) : null}
      {run.state === 'passed' ? (
        <LinkButton href={addressOf(governorOperations.governorCertificatePdf, { runId: run.id })} target="_blank">
          {isSigned ? 'Certificate (PDF)' : 'Test record (PDF)'}
        </LinkButton>
      ) : null}
    </div>
  );
}

/** One run on the bench: the point in turn, every point against its limits, and all that happened. */
export function GovernorRunPage() {
  const { runId = '' } = useParams({ strict: false }) as { runId?: string };
  const run = useSuspenseQuery(runQuery(runId)).data;
  const mayTake = useMay(governorOperations.takeGovernorReading);
  const isOpen = run.state === 'open';
  return (
    <>
      <ViewHead
        title={`${run.number}, ${run.workOrderNumber}`}
        question={`${run.designation} ${run.serial}: ${isOpen ? 'which point is next?' : 'how did it read?'}`}
      >
        <span className="row">
          <StateMark {...runMarks[run.state]} />
          <Link href={`/travelers/${run.travelerId}?step=${run.stepId}`}>Traveler</Link>
          <Link href="/governor-bench">Bench</Link>
        </span>
      </ViewHead>
      <div className="sheet stack">
        <Facts run={run} />
        {isOpen && run.step.blocked ? (
          <p>
            <StateMark state="waiting" word="not now" /> {run.step.blocked.detail}
          </p>
        ) : null}
        {isOpen ? (
          <RunBench run={run} mayTake={mayTake && !run.step.blocked} />
        ) : (
          <>
            <Ended run={run} />
            <PointList run={run} chosen={undefined} />
          </>
        )}
      </div>
      <div className="sheet stack">
        <h2>Points against limits, and earlier tests</h2>
        <EarlierTests run={run} />
      </div>
      <div className="sheet stack">
        <h2>What happened</h2>
        <RunHistory run={run} />
      </div>
    </>
  );
}
