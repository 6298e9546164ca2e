import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { useQuery } from '@tanstack/react-query';
import { useMay } from '../../api/me.ts';
import { CallLine } from '../../features/customers/CallLine.tsx';
import { QuotesOfOrder } from '../../features/quotes/QuotesOfOrder.tsx';
import { isOwed, quotable } from '../../features/quotes/quotable.ts';
import { WriteButtons } from '../../features/quotes/write-buttons.tsx';
import { paperWords, unitWords } from '../../features/work-orders/order-words.ts';
import { ReadyAnswer } from '../../features/work-orders/ReadyAnswer.tsx';
import { type WorkOrder, workOrderQuery } from '../../features/work-orders/work-orders.ts';
import { Link } from '../../ui/Link.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { OrderActions } from './OrderActions.tsx';

function MissingPapers({ order }: { order: WorkOrder }) {
  if (order.paperworkMissing.length === 0) return null;
  const names = order.paperworkMissing.map((paper) => paperWords[paper].toLowerCase()).join(', ');
  return <StateMark state="hold" word={`ask for: ${names}`} />;
}

const open: readonly string[] = ['draft', 'sent', 'silent'];

function isNothingOwed(order: WorkOrder): boolean {
  return (
    !order.quotes.some((quote) => open.includes(quote.state)) && !quotable(order).some((kind) => isOwed(order, kind))
  );
}

/** The one unit opened beside the list: what to say on the telephone, and the next answer to send. */
export function OpenedUnit({ workOrderId }: { workOrderId: string }) {
  const answer = useQuery(workOrderQuery(workOrderId));
  const mayQuote = useMay(quoteOperations.writeQuote);
  if (answer.error) return <Refusal problem={answer.error} />;
  const order = answer.data;
  if (!order) return <Skeleton lines={6} />;
  return (
    <div className="stack">
      <div>
        <h2>
          <Link href={`/work-orders/${order.id}`}>{order.number}</Link> {unitWords(order.unit)}
        </h2>
        <CallLine customerId={order.customer.id} name={order.customer.name} />
      </div>
      <ReadyAnswer order={order} />
      <MissingPapers order={order} />
      <section className="stack" aria-labelledby="next-answer">
        <h3 id="next-answer">The next answer</h3>
        {mayQuote && !isNothingOwed(order) ? (
          <div className="row">
            <WriteButtons order={order} onlyOwed />
          </div>
        ) : null}
        {isNothingOwed(order) ? <p className="soft">Nothing is to be sent, and no offer is out.</p> : null}
        <QuotesOfOrder workOrderId={order.id} mayAct={mayQuote} onlyOpen />
        <OrderActions order={order} />
      </section>
    </div>
  );
}
