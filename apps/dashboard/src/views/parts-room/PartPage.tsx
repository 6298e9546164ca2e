import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useQuery, useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { queryFor } from '../../api/query.ts';
import { LotTable } from '../../features/inventory/LotTable.tsx';
import { type Part, partQuery } from '../../features/inventory/lots.ts';
import { MovementTable } from '../../features/inventory/MovementTable.tsx';
import { PartAhead } from '../../features/inventory/PartAhead.tsx';
import { PartFacts, PartNumbers } from '../../features/inventory/PartFacts.tsx';
import { AlternatesDialog } from '../../features/inventory/set-alternates.tsx';
import { UsageTable } from '../../features/inventory/UsageTable.tsx';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import styles from './parts-room.module.css';

const address = z.object({ asked: z.enum(['', 'stand-ins']).catch('') });

/** The lots of the part and the ledger behind its numbers. */
function Behind({ part }: { part: Part }) {
  const lots = usePages(inventoryOperations.listLots, { partId: part.id });
  const movements = usePages(inventoryOperations.listMovements, { partId: part.id });
  return (
    <>
      <section className="sheet stack">
        <h2>Lots</h2>
        <PagesFrame of={lots}>
          <LotTable
            caption={`Lots of ${part.number}`}
            lots={lots.rows.filter((lot) => lot.onHand > 0)}
            empty={<EmptyState title="None of it is here">Receive it, or order it from the shortages.</EmptyState>}
          />
        </PagesFrame>
      </section>
      <section className="sheet stack">
        <h2>Use by month</h2>
        <UsageTable part={part} />
      </section>
      <section className="sheet stack">
        <h2>Every movement</h2>
        <PagesFrame of={movements}>
          <MovementTable caption={`Movements of ${part.number}`} movements={movements.rows} />
        </PagesFrame>
      </section>
    </>
  );
}

function PartSheet({ part }: { part: Part }) {
  const today = useToday();
  const stock = useQuery(queryFor(inventoryOperations.listPartStock, { search: part.number, limit: 50 })).data?.rows;
  const numbers = stock?.find((row) => row.part.id === part.id);
  const mayChange = useMay(partOperations.setAlternates);
  const [{ asked }, setAddress] = useAddress(address);
  return (
    <>
      <ViewHead
        title={`Part ${part.number}`}
        question={`${part.number} ${part.description}: how much over the coming weeks?`}
      >
        {mayChange ? <Button onPress={() => setAddress({ asked: 'stand-ins' })}>What may stand in</Button> : null}
      </ViewHead>
      <div className="stack">
        <div className="sheet">
          <div className={styles.facing}>
            <div className="stack">
              {numbers ? <PartNumbers part={part} stock={numbers} /> : null}
              <PartAhead part={part} today={today} />
            </div>
            <PartFacts part={part} />
          </div>
        </div>
        <Behind part={part} />
      </div>
      {mayChange && asked === 'stand-ins' ? (
        <AlternatesDialog part={part} onClose={() => setAddress({ asked: '' })} />
      ) : null}
    </>
  );
}

export function PartPage() {
  const { partId = '' } = useParams({ strict: false }) as { partId?: string };
  const part = useSuspenseQuery(partQuery(partId)).data.rows[0];
  if (!part)
    return <EmptyState title="There is no such part number">Search for it by number or description.</EmptyState>;
  return <PartSheet key={part.id} part={part} />;
}
