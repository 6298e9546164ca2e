import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { CancelOrderDialog } from '../../features/purchasing/cancel-order.tsx';
import { ChangeLineDialog } from '../../features/purchasing/change-order-line.tsx';
import { OrderItems } from '../../features/purchasing/OrderItems.tsx';
import { type OrderItem, orderMark, orderQuery } from '../../features/purchasing/orders.ts';
import { DateText } from '../../format/values.tsx';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

/** One order: what has come on each line, and what the supplier says now. */
export function OrderPage() {
  const { orderId = '' } = useParams({ strict: false }) as { orderId?: string };
  const order = useSuspenseQuery(orderQuery(orderId)).data;
  const mayChange = useMay(purchasingOperations.changeOrderLine);
  const [changed, setChanged] = useState<OrderItem>();
  const [isCancelling, setCancelling] = useState(false);
  return (
    <>
      <ViewHead title={`Order ${order.number}`} question={`What has come of ${order.number}?`}>
        <div className="row">
          <StateMark {...orderMark(order)} />
          <span>
            {order.supplier.name}, ordered <DateText date={order.orderedOn} />
          </span>
          {mayChange && order.state === 'ordered' ? (
            <Button weight="stop" onPress={() => setCancelling(true)}>
              Cancel what is open
            </Button>
          ) : null}
        </div>
      </ViewHead>
      <div className="sheet stack">
        {order.note ? <p>{order.note}</p> : null}
        <OrderItems order={order} onChange={mayChange ? setChanged : undefined} />
      </div>
      {changed ? <ChangeLineDialog order={order} item={changed} onClose={() => setChanged(undefined)} /> : null}
      {isCancelling ? <CancelOrderDialog order={order} onClose={() => setCancelling(false)} /> : null}
    </>
  );
}
