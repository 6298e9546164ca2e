import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { useMe } from '../../api/me.ts';
import { OutNow } from '../../features/inventory/FrozenLots.tsx';
import { LotsToDecide } from '../../features/peening/LotsToDecide.tsx';
import { TodayPanel } from '../../features/processes/TodayPanel.tsx';
import { ChecklistSheet } from '../../features/releases/ChecklistSheet.tsx';
import { checklistQuery } from '../../features/releases/releases.ts';
import { inspectionQueueQuery, type WaitingInspection } from '../../features/travelers/bench-board.ts';
import { InspectionQueue } from '../../features/travelers/InspectionQueue.tsx';
import { RaiseFinding } from '../../features/travelers/raise-finding.tsx';
import { StepSheet } from '../../features/travelers/StepSheet.tsx';
import { travelerQuery } from '../../features/travelers/traveler.ts';
import { UnitsForInspector } from '../../features/work-orders/UnitsForInspector.tsx';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Link } from '../../ui/Link.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import styles from './inspection.module.css';

const address = z.object({ step: z.string().catch('') });

/** The sheet in the middle: the step with its values and gauges, to sign here. */
function Opened({ row }: { row: WaitingInspection }) {
  const me = useMe();
  const traveler = useQuery(travelerQuery(row.travelerId)).data;
  const [isFinding, setFinding] = useState(false);
  const step = traveler?.steps.find((each) => each.id === row.stepId);
  if (!traveler || !step) return <Skeleton lines={8} />;
  return (
    <div className="stack">
      <div>
        <h2>{step.title}</h2>
        <p className="soft small">
          <Link href={`/travelers/${traveler.id}?step=${step.id}`}>{traveler.number}</Link>, {traveler.title}, serial{' '}
          {traveler.serial}, by {traveler.revision.manual} revision {traveler.revision.revision}
          {row.workBy.length > 0 ? `; work by ${row.workBy.join(', ')}` : ''}
        </p>
      </div>
      {row.ownWork ? <p>You did work on this part: another inspector signs it.</p> : null}
      <StepSheet key={step.id} traveler={traveler} step={step} signer={me} onFinding={() => setFinding(true)} />
      {isFinding ? <RaiseFinding traveler={traveler} onClose={() => setFinding(false)} /> : null}
    </div>
  );
}

/** At the right: everything that keeps this unit from leaving, by name. */
function OpenItems({ workOrderId, number }: { workOrderId: string; number: string }) {
  const checklist = useQuery(checklistQuery(workOrderId)).data;
  return (
    <section className="sheet stack" aria-labelledby="still-open">
      <h2 id="still-open">Still open on {number}</h2>
      {checklist ? <ChecklistSheet checklist={checklist} /> : <Skeleton lines={4} />}
      <Link href={`/release/${workOrderId}`}>Release of {number}</Link>
    </section>
  );
}

export function InspectionPage() {
  const { rows } = useSuspenseQuery(inspectionQueueQuery).data;
  const [{ step }] = useAddress(address);
  const opened = rows.find((row) => row.stepId === step) ?? rows[0];
  return (
    <>
      <ViewHead title="Inspection" question="What waits for my stamp, and what must I not let pass?" />
      <div className={`stack ${styles.above}`}>
        <TodayPanel />
        <LotsToDecide />
        <OutNow />
      </div>
      <div className={opened ? styles.three : styles.two}>
        <div className="stack">
          <section className="sheet" aria-label="Waiting for a stamp">
            <InspectionQueue rows={rows} opened={opened?.stepId} />
          </section>
          <section className="sheet stack" aria-labelledby="units">
            <h2 id="units">Units that need an inspector</h2>
            <UnitsForInspector />
          </section>
        </div>
        {opened ? (
          <section className="sheet" aria-label="The step">
            <Opened key={opened.stepId} row={opened} />
          </section>
        ) : null}
        {opened ? <OpenItems workOrderId={opened.workOrderId} number={opened.workOrderNumber} /> : null}
      </div>
    </>
  );
}
