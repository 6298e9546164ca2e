import { scopeTitles } from '@hubwright/contracts/manuals/words';
import { consentTitles } from '@hubwright/contracts/work-orders/states';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { z } from 'zod';
import { CallLine } from '../../features/customers/CallLine.tsx';
import { unitWords } from '../../features/work-orders/order-words.ts';
import { ReadyAnswer } from '../../features/work-orders/ReadyAnswer.tsx';
import { workOrderQuery } from '../../features/work-orders/work-orders.ts';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { LinkButton } from '../../ui/Button.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { Tabs } from '../../ui/Tabs.tsx';
import { DimensionsTab } from './DimensionsTab.tsx';
import styles from './front-desk.module.css';
import { OrderActions } from './OrderActions.tsx';
import {
  DirectivesTab,
  DocumentsTab,
  HoldsTab,
  OverviewTab,
  PartsTab,
  QuotesTab,
  TravelersTab,
} from './WorkOrderTabs.tsx';

const address = z.object({
  tab: z
    .enum(['overview', 'quotes', 'travelers', 'dimensions', 'parts', 'documents', 'directives', 'holds'])
    .catch('overview'),
});
const releasable: readonly string[] = ['final-inspection', 'released', 'shipped', 'closed'];

export function WorkOrderPage() {
  const { workOrderId = '' } = useParams({ strict: false }) as { workOrderId?: string };
  const order = useSuspenseQuery(workOrderQuery(workOrderId)).data;
  const [{ tab }, setAddress] = useAddress(address);
  const unread = order.parts.filter((part) => part.serial === null).length;
  const sheets = [
    { id: 'overview', title: 'Overview', content: <OverviewTab order={order} /> },
    { id: 'quotes', title: `Quotes (${order.quotes.length})`, content: <QuotesTab order={order} /> },
    { id: 'travelers', title: `Travelers (${order.travelers.length})`, content: <TravelersTab order={order} /> },
    { id: 'dimensions', title: 'Dimensions', content: <DimensionsTab order={order} /> },
    { id: 'parts', title: unread > 0 ? `Parts (${unread} not read)` : 'Parts', content: <PartsTab order={order} /> },
    { id: 'documents', title: 'Documents', content: <DocumentsTab order={order} /> },
    { id: 'directives', title: 'Directives', content: <DirectivesTab order={order} /> },
    { id: 'holds', title: `Holds (${order.holds.length} open)`, content: <HoldsTab order={order} /> },
  ];
  return (
    <>
      <ViewHead
        title={`Work order ${order.number}`}
        question={`${unitWords(order.unit)}: where is it, and what is next?`}
      >
        <div className="row">
          <StateMark state="note" word={scopeTitles[order.scope]} />
          <StateMark state={order.consent === 'approved' ? 'passed' : 'waiting'} word={consentTitles[order.consent]} />
          {releasable.includes(order.stage) ? (
            <LinkButton href={`/release/${order.id}`}>Release and its record</LinkButton>
          ) : null}
        </div>
      </ViewHead>
      <div className="stack">
        <div className={`sheet ${styles.halves}`}>
          <ReadyAnswer order={order} />
          <div className="stack">
            <CallLine customerId={order.customer.id} name={order.customer.name} />
            <OrderActions order={order} />
          </div>
        </div>
        <div className="sheet">
          <Tabs
            label={`About ${order.number}`}
            sheets={sheets}
            selected={tab}
            onSelect={(id) => setAddress({ tab: id as typeof tab })}
          />
        </div>
      </div>
    </>
  );
}
