import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { documentSetOperations } from '@hubwright/contracts/work-orders/document-set-operations';
import { printOperations } from '@hubwright/contracts/work-orders/print-operations';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useMay, useMe } from '../../api/me.ts';
import { UnitDirectives } from '../../features/directives/UnitDirectives.tsx';
import { PhotoStrip } from '../../features/photos/PhotoStrip.tsx';
import { QuotesOfOrder } from '../../features/quotes/QuotesOfOrder.tsx';
import { WriteButtons } from '../../features/quotes/write-buttons.tsx';
import { DocumentSet } from '../../features/travelers/DocumentSet.tsx';
import { TakeOverDocuments } from '../../features/travelers/take-over-documents.tsx';
import { ReadButton, ReadSerial, type Unread } from '../../features/units/confirm-identity.tsx';
import { LossTable } from '../../features/vendors/LossTable.tsx';
import { HoldList } from '../../features/work-orders/HoldList.tsx';
import { ArrivalFacts } from '../../features/work-orders/OrderFacts.tsx';
import { FindingBriefs, LooseItemList, OpenItems, TravelerBriefs } from '../../features/work-orders/OrderLists.tsx';
import { PartsInUnit } from '../../features/work-orders/PartsInUnit.tsx';
import { ShopCost } from '../../features/work-orders/ShopCost.tsx';
import type { WorkOrder } from '../../features/work-orders/work-orders.ts';
import { countOf } from '../../format/numbers.ts';
import { LinkButton } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import styles from './front-desk.module.css';

type Props = { order: WorkOrder };

export function OverviewTab({ order }: Props) {
  const me = useMe();
  return (
    <div className={styles.halves}>
      <div className="stack">
        <ArrivalFacts order={order} />
        <PhotoStrip shown={{ kind: 'work-order', id: order.id }} viewer={me} title="Photos of how it came" />
      </div>
      <div className="stack">
        <section aria-labelledby="open-items">
          <h2 id="open-items">What keeps it from leaving ({order.openItems.length})</h2>
          <OpenItems order={order} />
        </section>
        <section aria-labelledby="loose-items">
          <h2 id="loose-items">Came beside it</h2>
          <LooseItemList order={order} />
        </section>
        <section aria-labelledby="findings">
          <h2 id="findings">Found</h2>
          <FindingBriefs order={order} />
        </section>
        <ShopCost workOrderId={order.id} />
      </div>
    </div>
  );
}

export function QuotesTab({ order }: Props) {
  const mayQuote = useMay(quoteOperations.writeQuote);
  return (
    <div className="stack">
      {mayQuote ? (
        <div className="row">
          <WriteButtons order={order} />
        </div>
      ) : null}
      <QuotesOfOrder workOrderId={order.id} mayAct={mayQuote} />
    </div>
  );
}

export function DocumentsTab({ order }: Props) {
  const me = useMe();
  const mayTakeOver = useMay(documentSetOperations.takeOverDocuments);
  return (
    <div className="stack">
      <TakeOverDocuments workOrder={order} mayTakeOver={mayTakeOver} signer={me} />
      <DocumentSet workOrderId={order.id} />
    </div>
  );
}

export function DirectivesTab({ order }: Props) {
  const me = useMe();
  const mayRecord = useMay(directiveOperations.recordCompliance);
  return <UnitDirectives of={{ workOrderId: order.id }} signer={mayRecord ? me : undefined} />;
}

export function TravelersTab({ order }: Props) {
  return (
    <div className="stack">
      <p>
        <Link href={`/build/${order.id}`}>Build and teardown of {order.number}</Link>
      </p>
      {order.travelers.length > 0 ? (
        <div className="row">
          <LinkButton href={addressOf(printOperations.travelersPdf, { workOrderId: order.id })} target="_blank">
            Print all travelers with barcodes
          </LinkButton>
        </div>
      ) : null}
      <TravelerBriefs order={order} />
    </div>
  );
}

export function PartsTab({ order }: Props) {
  const me = useMe();
  const mayConfirm = useMay(unitOperations.confirmIdentity);
  const [read, setRead] = useState<Unread>();
  const unit = {
    id: order.unit.id,
    partNumber: order.unit.designation,
    provisionalName: order.unit.provisionalName,
    version: order.unitVersion,
  };
  return (
    <div className="stack">
      {order.unit.serial === null ? (
        <p className="row">
          The serial of the unit itself was not readable.{' '}
          {mayConfirm ? <ReadButton part={unit} onRead={setRead} /> : 'An inspector reads it.'}
        </p>
      ) : null}
      <PartsInUnit
        order={order}
        confirm={(part) => (mayConfirm ? <ReadButton part={part} onRead={setRead} /> : null)}
      />
      {order.kit ? (
        <p>
          Kit <Link href={`/kits/${order.kit.id}`}>{order.kit.code}</Link>: of {countOf(order.kit.newLines, 'line')}{' '}
          that need new parts {order.kit.pulled} in the tray or unit, {order.kit.promised} promised from stock.
        </p>
      ) : (
        <p className="soft">This scope has no kit.</p>
      )}
      <LossTable of={{ workOrderId: order.id }} title="Lost at vendors" />
      {read ? <ReadSerial part={read} signer={me} onClose={() => setRead(undefined)} /> : null}
    </div>
  );
}

export function HoldsTab({ order }: Props) {
  return <HoldList holds={order.allHolds} roles={useMe().roles} />;
}
