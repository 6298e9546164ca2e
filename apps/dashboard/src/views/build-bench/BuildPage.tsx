import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { documentSetOperations } from '@hubwright/contracts/work-orders/document-set-operations';
import { touchUpOperations } from '@hubwright/contracts/work-orders/touch-up-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useMay, useMe } from '../../api/me.ts';
import { type BuildSheet, buildSheetQuery } from '../../features/build/build-sheet.ts';
import { CloseBuild } from '../../features/build/close-build.tsx';
import { TakeOff } from '../../features/build/take-off.tsx';
import { BeginTeardown } from '../../features/travelers/begin-teardown.tsx';
import { RebaseRevision } from '../../features/travelers/rebase-revision.tsx';
import { TravelerList } from '../../features/travelers/TravelerList.tsx';
import { TakeOverDocuments } from '../../features/travelers/take-over-documents.tsx';
import { TouchUp } from '../../features/travelers/touch-up.tsx';
import { type WorkOrder, workOrderQuery } from '../../features/work-orders/work-orders.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { BuildParts } from './BuildParts.tsx';
import styles from './bench.module.css';

function Teardown({ order }: { order: WorkOrder }) {
  const mayBegin = useMay(travelerOperations.beginTeardown);
  const [isOpen, setOpen] = useState(false);
  if (!mayBegin || !order.possible.includes('start-teardown')) return null;
  return (
    <>
      <Button weight="next" onPress={() => setOpen(true)}>
        Begin teardown
      </Button>
      {isOpen ? <BeginTeardown workOrderId={order.id} number={order.number} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

/** After the teardown began, and while nothing of this unit was ever put in its rack. */
function CameOff({ order, sheet }: { order: WorkOrder; sheet: BuildSheet }) {
  const mayTakeOff = useMay(kitsOperations.takeOff);
  const [isOpen, setOpen] = useState(false);
  const kit = sheet.kits.find((each) => each.state === 'open');
  const untouched = sheet.rack.length === 0 && sheet.positions.every((line) => line.installed === 0);
  if (!mayTakeOff || !kit || !untouched || order.stage === 'received') return null;
  return (
    <>
      <Button onPress={() => setOpen(true)}>Put what came off in the rack</Button>
      {isOpen ? <TakeOff sheet={sheet} kitId={kit.id} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

/** Paint mended on a unit that is painted already. */
function PaintMended({ order }: { order: WorkOrder }) {
  const me = useMe();
  const mayTouchUp = useMay(touchUpOperations.touchUp);
  const [isOpen, setOpen] = useState(false);
  if (!mayTouchUp || !['in-work', 'build', 'final-inspection'].includes(order.stage)) return null;
  return (
    <>
      <Button onPress={() => setOpen(true)}>Touch up paint</Button>
      {isOpen ? <TouchUp order={order} signer={me} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

export function BuildPage() {
  const { workOrderId = '' } = useParams({ strict: false }) as { workOrderId?: string };
  const order = useSuspenseQuery(workOrderQuery(workOrderId)).data;
  const sheet = useSuspenseQuery(buildSheetQuery(workOrderId)).data;
  const me = useMe();
  const mayRebase = useMay(travelerOperations.rebaseRevision);
  const mayTakeOver = useMay(documentSetOperations.takeOverDocuments);
  // After a change of scope there may be nothing left to build.
  const isBuilt = order.stage === 'in-work' && sheet.judgement.closed;
  const mayClose = useMay(travelerOperations.closeBuild) && (order.stage === 'build' || isBuilt);
  const mayBuild = useMay(kitsOperations.installFromTray) && sheet.kits.some((kit) => kit.state === 'open');
  return (
    <>
      <ViewHead
        title={`Build of ${order.number}`}
        question={`${order.unit.designation} ${order.unit.serial ?? '(serial not readable yet)'}: what goes where, and is anything left?`}
      >
        <div className="row">
          <Link href={`/work-orders/${order.id}`}>{order.number}</Link>
          <span className="soft">
            {order.customer.name}
            {order.application
              ? `, for ${order.application.airframe} ${order.application.engine}, ${order.application.position}`
              : ', no application known'}
          </span>
          <Teardown order={order} />
          <CameOff order={order} sheet={sheet} />
          <PaintMended order={order} />
        </div>
      </ViewHead>
      <div className="stack">
        <RebaseRevision workOrder={order} mayRebase={mayRebase} signer={me} />
        <TakeOverDocuments workOrder={order} mayTakeOver={mayTakeOver} signer={me} />
        {sheet.positions.length > 0 ? (
          <BuildParts sheet={sheet} blades={order.model.bladeCount ?? 0} mayBuild={mayBuild} />
        ) : null}
        <details className="sheet" open={order.stage !== 'build'}>
          <summary>
            <h2 className={styles.summary}>Travelers</h2>
          </summary>
          <TravelerList workOrderId={order.id} />
        </details>
        <CloseBuild sheet={sheet} signer={me} mayClose={mayClose} />
      </div>
    </>
  );
}
