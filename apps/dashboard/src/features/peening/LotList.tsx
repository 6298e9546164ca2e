import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { peeningPaperOperations } from '@hubwright/contracts/peening/paper-operations';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import { countOf } from '../../format/numbers.ts';
import { InstantText } from '../../format/values.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { Link } from '../../ui/Link.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { CloseLot, SignLot } from './close-lot.tsx';
import { PeenAgain } from './peen-again.tsx';
import { type Lot, lotMarks } from './peening.ts';

type Doing = { what: 'sign' | 'close' | 'again'; lot: Lot };

function Strips({ lot }: { lot: Lot }) {
  const at = (readings: Lot['opening'] | null, name: string) =>
    readings?.find(({ area }) => area === name)?.arcHeight ?? '–';
  return (
    <span className="soft small">
      {lot.spec.areas.map(({ name }) => `${name} ${at(lot.opening, name)}, then ${at(lot.closing, name)}`).join('; ')}
    </span>
  );
}

/** Its parts; those of a held lot with where each is by now. */
function Parts({ lot: { state, parts } }: { lot: Lot }) {
  return parts.map(({ stepId, travelerId, workOrderNumber, position, before }) => (
    <span key={stepId}>
      <Link href={`/travelers/${travelerId}`}>{`${workOrderNumber} ${position}`}</Link>{' '}
      {state === 'held' ? (
        <span className="soft small">{before ? `before “${before}”` : 'nothing open on it'} </span>
      ) : null}
    </span>
  ));
}

function Next({ lot, onDo }: { lot: Lot; onDo: (doing: Doing) => void }) {
  const [mayPeen, mayDecide] = [useMay(peeningOperations.signPeeningLot), useMay(peeningOperations.peenAgain)];
  if (lot.state === 'open' && mayPeen)
    return (
      <Button weight="next" onPress={() => onDo({ what: 'sign', lot })}>
        All of it is peened: sign
      </Button>
    );
  if (lot.state === 'peened' && mayPeen)
    return (
      <Button weight="next" onPress={() => onDo({ what: 'close', lot })}>
        Read the closing strips
      </Button>
    );
  if (lot.state === 'held' && mayDecide)
    return <Button onPress={() => onDo({ what: 'again', lot })}>Peen it again</Button>;
  return null;
}

/** Lots with their strips before and after, where each stands, and what comes next. */
export function LotList({ lots, signer }: { lots: readonly Lot[]; signer: Signer }) {
  const [doing, setDoing] = useState<Doing>();
  const shared = { signer, onClose: () => setDoing(undefined) };
  if (lots.length === 0)
    return (
      <EmptyState title="No lot is under way">
        A lot begins with what waits for peening and its opening strips.
      </EmptyState>
    );
  return (
    <>
      <ul className="lines">
        {lots.map((lot) => (
          <li key={lot.id}>
            <span>
              <strong className="code">{lot.number}</strong> {lot.machine.code}, {lot.program}, media lot {lot.mediaLot}
              , {countOf(lot.parts.length, 'part')}, begun by {lot.startedBy.displayName},{' '}
              <InstantText instant={lot.startedAt} />
              <br />
              <Parts lot={lot} />
              <br />
              <Strips lot={lot} />
              {lot.reasons.length > 0 ? <span className="small"> {lot.reasons.join(' ')}</span> : null}
            </span>
            <span className="row">
              <LinkButton
                href={addressOf(peeningPaperOperations.peeningLotPdf, { lotId: lot.id })}
                target="_blank"
                aria-label={`${lot.number} on paper`}
              >
                On paper
              </LinkButton>
              <StateMark {...lotMarks[lot.state]} />
              <Next lot={lot} onDo={setDoing} />
            </span>
          </li>
        ))}
      </ul>
      {doing?.what === 'sign' ? <SignLot lot={doing.lot} {...shared} /> : null}
      {doing?.what === 'close' ? <CloseLot lot={doing.lot} {...shared} /> : null}
      {doing?.what === 'again' ? <PeenAgain lot={doing.lot} {...shared} /> : null}
    </>
  );
}
