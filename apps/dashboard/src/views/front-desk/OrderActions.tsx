import { useState } from 'react';
import { useMe } from '../../api/me.ts';
import { ChangeScope } from '../../features/travelers/change-scope.tsx';
import { CloseWorkOrder } from '../../features/work-orders/close-work-order.tsx';
import { DeclareInspected } from '../../features/work-orders/declare-inspected.tsx';
import { OkToShip } from '../../features/work-orders/ok-to-ship.tsx';
import { type OrderActionId, orderActions } from '../../features/work-orders/order-actions.ts';
import { PlaceHold } from '../../features/work-orders/place-hold.tsx';
import { ReturnUnrepaired } from '../../features/work-orders/return-unrepaired.tsx';
import { SetApplication } from '../../features/work-orders/set-application.tsx';
import { SetPromise } from '../../features/work-orders/set-promise.tsx';
import { ShipUnit } from '../../features/work-orders/ship-unit.tsx';
import { PreliminaryInspection } from '../../features/work-orders/sign-preliminary-inspection.tsx';
import type { WorkOrder } from '../../features/work-orders/work-orders.ts';
import { Button } from '../../ui/Button.tsx';
import styles from './front-desk.module.css';

/** What this person can do with the order now, and, for the rest, why not. */
export function OrderActions({ order }: { order: WorkOrder }) {
  const me = useMe();
  const [asked, setAsked] = useState<OrderActionId>();
  const close = () => setAsked(undefined);
  const actions = orderActions(order, me.roles);
  const refused = actions.filter((action) => action.no !== undefined);
  const dialogs: Record<OrderActionId, React.ReactNode> = {
    look: <PreliminaryInspection order={order} signer={me} onClose={close} />,
    inspected: <DeclareInspected order={order} onClose={close} />,
    application: <SetApplication order={order} onClose={close} />,
    promise: <SetPromise order={order} onClose={close} />,
    'ok-to-ship': <OkToShip order={order} onClose={close} />,
    ship: <ShipUnit order={order} onClose={close} />,
    return: <ReturnUnrepaired order={order} onClose={close} />,
    close: <CloseWorkOrder order={order} onClose={close} />,
    scope: <ChangeScope order={order} signer={me} onClose={close} />,
    hold: <PlaceHold order={order} onClose={close} />,
  };
  return (
    <div className="stack tight">
      <div className="row">
        {actions
          .filter((action) => action.no === undefined)
          .map(({ id, text, isNext }) => (
            <Button key={id} weight={isNext ? 'next' : 'plain'} onPress={() => setAsked(id)}>
              {text}
            </Button>
          ))}
      </div>
      {refused.length > 0 ? (
        <details className={styles.why}>
          <summary>Not possible now ({refused.length})</summary>
          <ul className="lines small">
            {refused.map(({ id, text, no }) => (
              <li key={id}>
                <span>
                  {text}: no, because {no}.
                </span>
              </li>
            ))}
          </ul>
        </details>
      ) : null}
      {asked ? dialogs[asked] : null}
    </div>
  );
}
