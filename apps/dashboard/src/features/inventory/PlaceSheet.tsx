import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { DateText, Quantity } from '../../format/values.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ExportButton } from '../../ui/ExportButton.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { ChangeBinDialog } from './change-bin.tsx';
import type { LotThere, Place } from './places.ts';
import { lotMarks } from './stock-words.ts';

const exported = [
  { header: 'Lot', value: (lot: LotThere) => lot.code },
  { header: 'Part', value: (lot: LotThere) => lot.part.number },
  { header: 'Description', value: (lot: LotThere) => lot.part.description },
  { header: 'Owner', value: (lot: LotThere) => lot.owner ?? '' },
  { header: 'State', value: (lot: LotThere) => lotMarks[lot.state].word },
  { header: 'First day of no use', value: (lot: LotThere) => lot.expiresOn },
  { header: 'On hand', value: (lot: LotThere) => lot.onHand },
  { header: 'Unit', value: (lot: LotThere) => lot.part.issueUnit },
];

function LotLine({ lot }: { lot: LotThere }) {
  return (
    <li>
      <span>
        <Link href={`/lots/${lot.id}`}>{lot.code}</Link> <span className="code">{lot.part.number}</span>{' '}
        <span className="soft">
          {lot.part.description}
          {lot.owner ? `, ${lot.owner}’s` : ''}
          {lot.expiresOn ? (
            <>
              , no use from <DateText date={lot.expiresOn} />
            </>
          ) : null}
        </span>
      </span>
      {lot.state === 'accepted' ? null : <StateMark {...lotMarks[lot.state]} />}
      <Quantity amount={lot.onHand} unit={lot.part.issueUnit} />
    </li>
  );
}

/** One place opened: what lies there, lot by lot. */
export function PlaceSheet({ place }: { place: Place }) {
  const lots = usePages(partOperations.listLotsAt, { kind: place.kind, ref: place.ref });
  const mayChange = useMay(partOperations.changeBin) && place.kind === 'bin';
  const [isChanging, setChanging] = useState(false);
  return (
    <section className="sheet stack" aria-label={place.title}>
      <div className="row between">
        <h2>
          {place.title}
          {place.label ? <span className="soft">, {place.label}</span> : null}
        </h2>
        {mayChange ? <Button onPress={() => setChanging(true)}>Change</Button> : null}
      </div>
      <PagesFrame of={lots}>
        {lots.rows.length === 0 ? (
          <EmptyState title="Nothing lies here">Parts come here when they are put away or moved.</EmptyState>
        ) : (
          <>
            <ul className="lines">
              {lots.rows.map((lot) => (
                <LotLine key={lot.id} lot={lot} />
              ))}
            </ul>
            <div className="row">
              <ExportButton caption={`Lots in ${place.title}`} columns={exported} rows={lots.rows} />
            </div>
          </>
        )}
      </PagesFrame>
      {isChanging ? <ChangeBinDialog bin={place} onClose={() => setChanging(false)} /> : null}
    </section>
  );
}
