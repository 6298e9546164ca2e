import { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { orderOperations } from '@hubwright/contracts/purchasing/order-operations';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import { AllowDialog } from '../../features/purchasing/approve-supplier.tsx';
import { CancelOrderDialog } from '../../features/purchasing/cancel-order.tsx';
import { ChangeLineDialog } from '../../features/purchasing/change-order-line.tsx';
import { ConfirmDialog } from '../../features/purchasing/confirm-order.tsx';
import { SentDialog } from '../../features/purchasing/mark-sent.tsx';
import { OrderItems } from '../../features/purchasing/OrderItems.tsx';
import { type Order, type OrderItem, orderMark, orderQuery } from '../../features/purchasing/orders.ts';
import { RevisionList } from '../../features/purchasing/RevisionList.tsx';
import { supplierQuery } from '../../features/purchasing/suppliers.ts';
import { DateText } from '../../format/values.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { OrderServes } from './Serves.tsx';

/** A box of this one order is taken although its supplier is not approved any more. */
function AllowOrder({ order, onClose }: { order: Order; onClose: () => void }) {
  const standing = useQuery(supplierQuery(order.supplier.id)).data?.standing;
  if (standing === undefined) return null;
  return <AllowDialog supplier={order.supplier} order={order} standing={standing} onClose={onClose} />;
}

/** One order: what has come on each line, and what the supplier says now. */
export function OrderPage() {
  const { orderId = '' } = useParams({ strict: false }) as { orderId?: string };
  const order = useSuspenseQuery(orderQuery(orderId)).data;
  const mayChange = useMay(purchasingOperations.changeOrderLine);
  const mayAllow = useMay(approvalOperations.allowSupplier);
  const [changed, setChanged] = useState<OrderItem>();
  const [doing, setDoing] = useState<'cancel' | 'send' | 'confirm' | 'allow'>();
  const close = () => setDoing(undefined);
  const isUnsent = order.sentRevision !== order.revision;
  const isOpen = mayChange && order.state === 'ordered';
  return (
    <>
      <ViewHead title={`Order ${order.number}`} question={`What has come of ${order.number}?`}>
        <div className="row">
          <StateMark {...orderMark(order)} />
          <span>
            <Link href={`/suppliers/${order.supplier.id}`}>{order.supplier.name}</Link>, ordered{' '}
            <DateText date={order.orderedOn} />, revision {order.revision}
          </span>
          {isUnsent ? <StateMark state="waiting" word="not sent as it is now" /> : null}
          <LinkButton href={addressOf(orderOperations.orderPdf, { orderId })} target="_blank">
            Print
          </LinkButton>
          {mayChange && isUnsent ? (
            <Button weight={isOpen ? 'next' : 'plain'} onPress={() => setDoing('send')}>
              It was sent
            </Button>
          ) : null}
          {isOpen ? (
            <>
              <Button weight={isUnsent ? 'plain' : 'next'} onPress={() => setDoing('confirm')}>
                The supplier confirmed
              </Button>
              <Button weight="stop" onPress={() => setDoing('cancel')}>
                Cancel what is open
              </Button>
            </>
          ) : null}
          {mayAllow && order.state === 'ordered' ? (
            <Button weight="quiet" onPress={() => setDoing('allow')}>
              Allow by exception
            </Button>
          ) : null}
        </div>
      </ViewHead>
      <div className="stack">
        <div className="sheet stack">
          {order.note ? <p>{order.note}</p> : null}
          <OrderItems order={order} onChange={mayChange ? setChanged : undefined} />
        </div>
        {order.state === 'ordered' ? <OrderServes order={order} /> : null}
        <RevisionList order={order} />
      </div>
      {changed ? <ChangeLineDialog order={order} item={changed} onClose={() => setChanged(undefined)} /> : null}
      {doing === 'cancel' ? <CancelOrderDialog order={order} onClose={close} /> : null}
      {doing === 'send' ? <SentDialog order={order} onClose={close} /> : null}
      {doing === 'allow' ? <AllowOrder order={order} onClose={close} /> : null}
      {doing === 'confirm' ? <ConfirmDialog order={order} onClose={close} /> : null}
    </>
  );
}
