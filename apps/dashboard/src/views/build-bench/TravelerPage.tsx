import { clockOperations } from '@hubwright/contracts/work-orders/clock-operations';
import { printOperations } from '@hubwright/contracts/work-orders/print-operations';
import { reopenOperations } from '@hubwright/contracts/work-orders/reopen-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { z } from 'zod';
import { addressOf } from '../../api/address.ts';
import { useMay, useMe } from '../../api/me.ts';
import { StepClock } from '../../features/clock/StepClock.tsx';
import { PhotoStrip } from '../../features/photos/PhotoStrip.tsx';
import { CorrectSignOff } from '../../features/travelers/correct-sign-off.tsx';
import { FailSignedTest } from '../../features/travelers/fail-signed-test.tsx';
import { RaiseFinding } from '../../features/travelers/raise-finding.tsx';
import { isBuildTest } from '../../features/travelers/reopen-build.tsx';
import { SignOffList } from '../../features/travelers/SignOffList.tsx';
import { StepList } from '../../features/travelers/StepList.tsx';
import { StepSheet } from '../../features/travelers/StepSheet.tsx';
import { TravelerPrint } from '../../features/travelers/TravelerPrint.tsx';
import { currentSignOff, type Step, type Traveler, travelerQuery } from '../../features/travelers/traveler.ts';
import { countOf } from '../../format/numbers.ts';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import styles from './bench.module.css';

const address = z.object({ step: z.string().catch('') });

/** What may still be said of a signed step: it was signed wrongly or, of a test of the built unit, it failed after all. */
function SignedStep({ traveler, step }: { traveler: Traveler; step: Step }) {
  const me = useMe();
  const maySign = useMay(travelerOperations.signStep);
  const mayReopen = useMay(reopenOperations.reopenBuild) && isBuildTest(traveler, step);
  const [doing, setDoing] = useState<'correct' | 'fail'>();
  const current = currentSignOff(step);
  const about = { traveler, step, signer: me, onClose: () => setDoing(undefined) };
  if (!current) return null;
  return (
    <div className="row">
      {maySign ? (
        <Button weight="quiet" onPress={() => setDoing('correct')}>
          This was signed wrongly: correct it
        </Button>
      ) : null}
      {mayReopen ? (
        <Button weight="quiet" onPress={() => setDoing('fail')}>
          It failed after all: reopen the build
        </Button>
      ) : null}
      {doing === 'correct' ? <CorrectSignOff {...about} signOff={current} /> : null}
      {doing === 'fail' ? <FailSignedTest {...about} /> : null}
    </div>
  );
}

/** The step on the sheet: to sign when it is its turn, to read when it is signed, explained when it cannot start. */
function OpenedStep({ traveler, step, onFinding }: { traveler: Traveler; step: Step; onFinding: () => void }) {
  const me = useMe();
  const maySign = useMay(travelerOperations.signStep);
  const mayClock = useMay(clockOperations.startClock);
  return (
    <div className="sheet stack">
      <h2>
        {step.sequence}. {step.title}
      </h2>
      {step.state === 'open' && step.blocked ? (
        <p>
          <StateMark state="waiting" word="not yet" /> {step.blocked.detail}
        </p>
      ) : null}
      {step.state === 'open' && mayClock ? <StepClock step={step} /> : null}
      {step.state === 'open' && !step.blocked && maySign ? (
        <StepSheet key={step.id} traveler={traveler} step={step} signer={me} onFinding={onFinding} />
      ) : null}
      {step.state === 'not-needed' ? <p>This step is not needed any more.</p> : null}
      <SignOffList step={step} />
      <PhotoStrip shown={{ kind: 'traveler-step', id: step.id }} viewer={me} title="Photos of this step" />
      {step.state === 'signed' ? <SignedStep traveler={traveler} step={step} /> : null}
    </div>
  );
}

export function TravelerPage() {
  const { travelerId = '' } = useParams({ strict: false }) as { travelerId?: string };
  const traveler = useSuspenseQuery(travelerQuery(travelerId)).data;
  const [{ step: chosen }] = useAddress(address);
  const [isFinding, setFinding] = useState(false);
  const me = useMe();
  const opened =
    traveler.steps.find((step) => step.id === chosen) ??
    traveler.steps.find((step) => step.state === 'open') ??
    traveler.steps.at(-1);
  return (
    <>
      <ViewHead
        title={`Traveler ${traveler.number}`}
        question={`${traveler.title}, serial ${traveler.serial}: what is the next step?`}
      >
        <div className="row">
          <Link href={`/work-orders/${traveler.workOrder.id}`}>{traveler.workOrder.number}</Link>
          <span className="soft">
            {traveler.workOrder.customer}, {traveler.revision.manual} revision {traveler.revision.revision},{' '}
            {traveler.stepsDone} of {countOf(traveler.steps.length, 'step')} signed
          </span>
          <LinkButton href={addressOf(printOperations.travelerPdf, { travelerId: traveler.id })} target="_blank">
            Print with barcodes
          </LinkButton>
          {traveler.revision.state === 'superseded' ? <StateMark state="hold" word="revision superseded" /> : null}
        </div>
      </ViewHead>
      {traveler.findings.length > 0 ? (
        <ul className="lines">
          {traveler.findings.map((finding) => (
            <li key={finding.id}>
              <span>
                <Link href={`/findings?show=all&open=${finding.id}`}>{finding.number}</Link> {finding.place}:{' '}
                {finding.description}
              </span>
              <StateMark
                state={finding.disposition ? 'note' : 'waiting'}
                word={finding.disposition ?? 'an inspector decides'}
              />
            </li>
          ))}
        </ul>
      ) : null}
      <TravelerPrint traveler={traveler} />
      <div className="no-print">
        <div className={styles.beside}>
          <div className="sheet stack">
            <StepList traveler={traveler} opened={opened?.id} />
            <PhotoStrip shown={{ kind: 'traveler', id: traveler.id }} viewer={me} title="Photos of the part" />
          </div>
          {opened ? (
            <OpenedStep key={opened.id} traveler={traveler} step={opened} onFinding={() => setFinding(true)} />
          ) : null}
        </div>
      </div>
      {isFinding ? <RaiseFinding traveler={traveler} onClose={() => setFinding(false)} /> : null}
    </>
  );
}
