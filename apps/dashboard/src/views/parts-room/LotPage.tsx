import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { LotFacts, LotPlaces } from '../../features/inventory/LotFacts.tsx';
import { type Lot, lotQuery, type Movement } from '../../features/inventory/lots.ts';
import { MovementTable } from '../../features/inventory/MovementTable.tsx';
import { ReverseDialog } from '../../features/inventory/reverse-movement.tsx';
import { lotMarks } from '../../features/inventory/stock-words.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { PrintLabel } from '../../ui/PrintLabel.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { LotActions } from './LotActions.tsx';
import styles from './parts-room.module.css';
import { LotServes } from './Serves.tsx';

function Blocked({ lot }: { lot: Lot }) {
  if (lot.blocked.length === 0) return <StateMark state="passed" word="nothing stands against using it" />;
  return (
    <ul className="stack tight" aria-label="What stands against using it">
      {lot.blocked.map((sentence) => (
        <li key={sentence} className="row tight">
          <StateMark state="stop" word={sentence} />
        </li>
      ))}
    </ul>
  );
}

/** Every movement behind the numbers of the lot; each can be undone once, or says why not. */
function Movements({ lot }: { lot: Lot }) {
  const movements = usePages(inventoryOperations.listMovements, { lotId: lot.id });
  const mayReverse = useMay(inventoryOperations.reverseMovement);
  const [reversed, setReversed] = useState<Movement>();
  return (
    <section className="sheet stack">
      <h2>Every movement</h2>
      <PagesFrame of={movements}>
        <MovementTable
          caption={`Movements of ${lot.code}`}
          movements={movements.rows}
          ofOneLot
          onReverse={mayReverse ? setReversed : undefined}
        />
      </PagesFrame>
      {reversed ? <ReverseDialog movement={reversed} onClose={() => setReversed(undefined)} /> : null}
    </section>
  );
}

export function LotPage() {
  const { lotId = '' } = useParams({ strict: false }) as { lotId?: string };
  const lot = useSuspenseQuery(lotQuery(lotId)).data;
  return (
    <>
      <ViewHead title={`Lot ${lot.code}`} question={`${lot.code}: where is it, and may it be used?`}>
        <div className="row">
          <StateMark {...lotMarks[lot.state]} />
          <PrintLabel
            text="Print its label"
            hrefOf={(form) => addressOf(receivingOperations.lotLabelsPdf, { lotId: lot.id, form })}
          />
        </div>
      </ViewHead>
      <div className="stack">
        <div className="sheet stack">
          <Blocked lot={lot} />
          <LotActions lot={lot} />
          <div className={styles.facing}>
            <LotFacts lot={lot} />
            <LotPlaces lot={lot} />
          </div>
        </div>
        {lot.origin === 'taken-off' ? null : <LotServes lot={lot} />}
        <Movements lot={lot} />
      </div>
    </>
  );
}
