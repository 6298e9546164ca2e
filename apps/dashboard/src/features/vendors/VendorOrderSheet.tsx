import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { countOf } from '../../format/numbers.ts';
import { DateText, DueText } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { ChangeExpected } from './change-expected.tsx';
import { TakeBack } from './take-back.tsx';
import styles from './vendors.module.css';
import { conditionWords, type VendorLine, type VendorOrder } from './vendors.ts';

function LineRow({ line }: { line: VendorLine }) {
  const { condition, certificate, note } = line;
  const came = condition === 'good' ? 'passed' : 'stop';
  return (
    <li>
      <Link href={`/travelers/${line.travelerId}?step=${line.stepId}`}>{line.travelerNumber}</Link> {line.position}{' '}
      <span className="code">{line.serial}</span>{' '}
      <span className="soft small">
        {line.workOrderNumber}: {line.work}
      </span>{' '}
      {condition === null ? (
        <StateMark state="on-order" word="out" />
      ) : (
        <StateMark state={came} word={conditionWords[condition]} />
      )}
      {certificate ? <span className="small"> certificate {certificate}</span> : null}
      {note ? <span className="soft small"> {note}</span> : null}
    </li>
  );
}

/** One order at a vendor: what is out, since when, what must come back, and whether it is late. */
export function VendorOrderSheet({ order, signer }: { order: VendorOrder; signer: Signer }) {
  const mayChange = useMay(vendorOperations.changeExpected);
  const mayTake = useMay(vendorOperations.takeBack);
  const [doing, setDoing] = useState<'change' | 'take'>();
  const isOut = order.state === 'out';
  const close = () => setDoing(undefined);
  return (
    <section className={styles.order} aria-label={order.number}>
      <div className="row between">
        <h3>
          {order.number} <span className="soft">{order.vendor.name}</span>
        </h3>
        {order.daysLate > 0 ? <StateMark state="waiting" word={`${countOf(order.daysLate, 'day')} late`} /> : null}
      </div>
      <p className="small">
        Sent <DateText date={order.sentOn} /> on {order.purchaseOrder}
        {isOut ? (
          <>
            , expected <DueText date={order.expectedOn} />
          </>
        ) : null}
        . Must come back with it: {order.paperDue}.
      </p>
      <ul className={styles.lines}>
        {order.lines.map((line) => (
          <LineRow key={line.id} line={line} />
        ))}
      </ul>
      {order.pieces.length > 0 ? (
        <p className="small soft">
          With it: {order.pieces.map(({ quantity, part, lotCode }) => `${quantity} × ${part} (${lotCode})`).join(', ')}
        </p>
      ) : null}
      {isOut ? (
        <div className="row actions">
          {mayTake ? <Button onPress={() => setDoing('take')}>Take back</Button> : null}
          {mayChange ? (
            <Button weight="quiet" onPress={() => setDoing('change')}>
              New promise of the vendor
            </Button>
          ) : null}
        </div>
      ) : null}
      {doing === 'take' ? <TakeBack order={order} signer={signer} onClose={close} /> : null}
      {doing === 'change' ? <ChangeExpected order={order} onClose={close} /> : null}
    </section>
  );
}
