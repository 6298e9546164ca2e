import { eventTitles, scopeTitles } from '@hubwright/contracts/manuals/words';
import type { ReactNode } from 'react';
import { meterWords } from '../../format/meter-words.tsx';
import { countOf } from '../../format/numbers.ts';
import { Amount, DateText, Hours, InstantText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { paperWords, serialWords } from './order-words.ts';
import type { WorkOrder } from './work-orders.ts';

function Fact({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Times({ times }: { times: WorkOrder['times'] }) {
  if (!times) return <>not told</>;
  return (
    <>
      since new <Hours tenths={times.sinceNewTenths} />, since overhaul <Hours tenths={times.sinceOverhaulTenths} />
      {times.sinceNewCycles === 'unknown' ? '' : `, ${countOf(times.sinceNewCycles, 'cycle')} since new`}
      {times.meter ? ` (${meterWords[times.meter]}` : ''}
      {times.meter && times.meterTenths !== null ? (
        <>
          {' '}
          reads <Hours tenths={times.meterTenths} />
        </>
      ) : null}
      {times.meter ? ')' : ''}
    </>
  );
}

function Papers({ order }: { order: WorkOrder }) {
  return (
    <>
      {order.paperwork.map((paper) => paperWords[paper]).join(', ') || 'none'}
      {order.paperworkMissing.length > 0 ? (
        <>
          {' '}
          <StateMark
            state="hold"
            word={`missing: ${order.paperworkMissing.map((paper) => paperWords[paper].toLowerCase()).join(', ')}`}
          />
        </>
      ) : null}
      {order.paperworkNote ? <p className="small soft">{order.paperworkNote}</p> : null}
    </>
  );
}

/** How it came in: whose it is, where it flies, hours, papers, what happened, who looked. */
export function ArrivalFacts({ order }: { order: WorkOrder }) {
  const { application, aircraft, preliminaryInspection: look } = order;
  return (
    <dl className="facts">
      <Fact title="Unit">
        <Link href={`/units/${order.unit.id}`}>
          {order.unit.maker} {order.unit.designation}
        </Link>{' '}
        <span className="code">{serialWords(order.unit)}</span>
      </Fact>
      <Fact title="Customer">
        <Link href={`/customers/${order.customer.id}`}>{order.customer.name}</Link>
      </Fact>
      <Fact title="Aircraft">
        {aircraft ? `${aircraft.registration}, ${aircraft.airframe}, ${aircraft.engine}` : 'not told'}
      </Fact>
      <Fact title="Application">
        {application
          ? `${application.airframe}, ${application.engine}, ${application.position}, ${application.approval}`
          : 'not told: no angle is set and no governor tested without it'}
      </Fact>
      <Fact title="Asked for">
        {scopeTitles[order.scope]}: {order.reason}
      </Fact>
      {order.events.length > 0 ? (
        <Fact title="What happened">
          <StateMark state="stop" word={order.events.map((event) => eventTitles[event]).join(', ')} />
        </Fact>
      ) : null}
      <Fact title="Hours">
        <Times times={order.times} />
      </Fact>
      <Fact title="Papers">
        <Papers order={order} />
      </Fact>
      <Fact title="Received">
        <DateText date={order.receivedOn} />
      </Fact>
      <Fact title="Preliminary inspection">
        {look ? (
          <>
            <StateMark state="signed" word={`signed by ${look.person}`} />, <InstantText instant={look.signedAt} />
            {`: ${look.result}`}
          </>
        ) : (
          <StateMark state="waiting" word="an inspector has not looked yet" />
        )}
      </Fact>
      <Fact title="Manual">
        {order.revision.manual}, revision {order.revision.revision}
        {order.revision.state === 'current' ? '' : ' (superseded)'}
      </Fact>
      <Fact title="Evaluation up to">
        {order.evaluationCapMinor === null ? 'not approved yet' : <Amount minor={order.evaluationCapMinor} />}
      </Fact>
    </dl>
  );
}
