import { sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import type { ReactNode } from 'react';
import { DueText, InstantText } from '../../format/values.tsx';
import { Link } from '../../ui/Link.tsx';
import type { Lot } from './lots.ts';

const origins = {
  purchase: 'bought',
  customer: 'supplied by the customer',
  'taken-off': 'taken off a unit',
  opening: 'opening stock',
} as const;

function Fact({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** What the lot is and what came with it. */
export function LotFacts({ lot }: { lot: Lot }) {
  return (
    <dl className="facts">
      <Fact name="Part">
        <Link href={`/parts/${lot.part.id}`}>{lot.part.number}</Link> {lot.part.description}
        {lot.serial ? `, serial ${lot.serial}` : ''}
      </Fact>
      <Fact name="Source">
        {sourceClassTitles[lot.sourceClass]}, {origins[lot.origin]}
        {lot.owner ? `; belongs to ${lot.owner.name}` : ''}
        {lot.workOrder ? `; from ${lot.workOrder.number}` : ''}
      </Fact>
      <Fact name="Supplier’s lot">{lot.supplierLot || 'not given'}</Fact>
      <Fact name="Certificate">{lot.certificate || 'none yet'}</Fact>
      <Fact name="Cure date">{lot.cureDate ?? 'none: it does not age by rule'}</Fact>
      {lot.expiresOn ? (
        <Fact name="Not to be used from">
          <DueText date={lot.expiresOn} />
        </Fact>
      ) : null}
      <Fact name="Came">
        <InstantText instant={lot.receivedAt} />
        {lot.order ? (
          <>
            {' '}
            on <Link href={`/orders/${lot.order.id}`}>{lot.order.number}</Link>
          </>
        ) : null}
      </Fact>
      {lot.surrender ? (
        <Fact name="Given up">
          by {lot.surrender.givenBy} on {lot.surrender.dated}: {lot.surrender.letter}
        </Fact>
      ) : null}
      {lot.note ? <Fact name="Seen on receipt">{lot.note}</Fact> : null}
    </dl>
  );
}

/** Where the pieces lie and to whom they are promised. */
export function LotPlaces({ lot }: { lot: Lot }) {
  const here = lot.places.filter((place) => place.onHand > 0);
  return (
    <div className="stack">
      <section>
        <h2>Where it lies</h2>
        {here.length === 0 ? <p className="soft">Nothing of it is left.</p> : null}
        <ul className="lines">
          {here.map((place) => (
            <li key={place.kind + place.ref}>
              <span>{place.title}</span>
              <span className="quantity">
                {place.onHand} <span className="unit">{lot.part.issueUnit}</span>
              </span>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h2>Promised to</h2>
        {lot.reservations.length === 0 ? <p className="soft">Nobody.</p> : null}
        <ul className="lines">
          {lot.reservations.map((each) => (
            <li key={each.id}>
              <div>
                <p>
                  <Link href={`/kits/${each.kitId}`}>{each.kitCode}</Link> of {each.workOrderNumber}, for{' '}
                  {each.position}
                </p>
                <p className="small soft">
                  needed by <DueText date={each.needBy} />
                </p>
              </div>
              <span className="quantity">
                {each.quantity} <span className="unit">{lot.part.issueUnit}</span>
              </span>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}
