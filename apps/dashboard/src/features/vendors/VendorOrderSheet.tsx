import { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { vendorPieceOperations } from '@hubwright/contracts/vendors/piece-operations';
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
import { TakeBackPieces } from './take-back-pieces.tsx';
import styles from './vendors.module.css';
import { conditionWords, type VendorLine, type VendorOrder } from './vendors.ts';
import { WriteOffPart, WriteOffPieces } from './write-off.tsx';

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

/** What may be done with an order that is out, by what it still has there; each opens a form. */
function useDoings(order: VendorOrder) {
  const may = {
    take: useMay(vendorOperations.takeBack),
    pieces: useMay(vendorPieceOperations.takeBackPieces),
    change: useMay(vendorOperations.changeExpected),
    losePart: useMay(lossOperations.writeOffPart),
    losePieces: useMay(lossOperations.writeOffPieces),
  };
  const hasParts = order.lines.some(({ condition }) => condition === null);
  const hasPieces = order.pieces.length > 0;
  const all = [
    { id: 'take', text: 'Take back', is: may.take && hasParts },
    { id: 'pieces', text: 'Take back pieces alone', is: may.pieces && hasPieces },
    { id: 'change', text: 'New promise of the vendor', is: may.change },
    { id: 'lose-part', text: 'A part does not come back', is: may.losePart && hasParts },
    { id: 'lose-pieces', text: 'Pieces do not come back', is: may.losePieces && hasPieces },
  ] as const;
  return order.state === 'out' ? all.filter(({ is }) => is) : [];
}

const forms = {
  take: TakeBack,
  pieces: TakeBackPieces,
  change: ChangeExpected,
  'lose-part': WriteOffPart,
  'lose-pieces': WriteOffPieces,
} as const;

/** One order at a vendor: what is out, since when, what must come back, and whether it is late. */
export function VendorOrderSheet({ order, signer }: { order: VendorOrder; signer: Signer }) {
  const doings = useDoings(order);
  const [doing, setDoing] = useState<keyof typeof forms>();
  const isOut = order.state === 'out';
  const Form = doing && forms[doing];
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
      {doings.length > 0 ? (
        <div className="row actions">
          {doings.map(({ id, text }, index) => (
            <Button key={id} {...(index > 0 ? { weight: 'quiet' as const } : {})} onPress={() => setDoing(id)}>
              {text}
            </Button>
          ))}
        </div>
      ) : null}
      {Form ? <Form order={order} signer={signer} onClose={() => setDoing(undefined)} /> : null}
    </section>
  );
}
