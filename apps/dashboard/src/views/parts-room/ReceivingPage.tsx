import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useState } from 'react';
import { z } from 'zod';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { LotTable } from '../../features/inventory/LotTable.tsx';
import { ExpectedTable } from '../../features/purchasing/ExpectedTable.tsx';
import { HeldTable } from '../../features/purchasing/HeldTable.tsx';
import type { Held } from '../../features/purchasing/held.ts';
import { ReturnDialog } from '../../features/purchasing/hold-delivery.tsx';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { FilterField } from '../../ui/FilterField.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import styles from './parts-room.module.css';
import { ReceiveSheet } from './ReceiveSheet.tsx';

const address = z.object({ search: z.string().catch(''), line: z.string().catch(''), without: z.string().catch('') });

/** Lots that came and wait for someone authorised to look at them. */
function WaitingLots() {
  const waiting = usePages(inventoryOperations.listLots, { state: 'quarantine' });
  return (
    <section className="sheet stack">
      <h2>Waiting to be judged</h2>
      <PagesFrame of={waiting}>
        <LotTable
          caption="Lots in quarantine"
          only={['code', 'part', 'onHand', 'expires', 'certificate']}
          lots={waiting.rows.filter((lot) => lot.onHand > 0)}
          empty={
            <EmptyState title="Nothing waits in quarantine">
              What is received lands here until it is accepted or rejected.
            </EmptyState>
          }
        />
      </PagesFrame>
    </section>
  );
}

/** What came and is not taken, until it goes back. */
function HeldDeliveries() {
  const held = usePages(heldOperations.listHeld, {});
  const mayReturn = useMay(heldOperations.returnHeld);
  const today = useToday();
  const [returning, setReturning] = useState<Held>();
  return (
    <section className="sheet stack">
      <h2>Held to go back</h2>
      <PagesFrame of={held}>
        <HeldTable rows={held.rows} onReturn={mayReturn ? setReturning : undefined} />
      </PagesFrame>
      {returning ? <ReturnDialog held={returning} today={today} onClose={() => setReturning(undefined)} /> : null}
    </section>
  );
}

/** Left what is expected and what waits, right the box being opened. */
export function ReceivingPage() {
  const [{ search, line, without }, setAddress] = useAddress(address);
  const expected = usePages(purchasingOperations.expectedDeliveries, search === '' ? {} : { search });
  const mayReceive = useMay(inventoryOperations.receiveLot);
  const isReceiving = mayReceive && (line !== '' || without !== '');
  const close = () => setAddress({ line: '', without: '' });
  return (
    <div className={isReceiving ? styles.beside : ''}>
      <div className="stack">
        <section className="sheet stack">
          <h2>Expected</h2>
          <PagesFrame of={expected}>
            <ExpectedTable
              rows={expected.rows}
              isBeside={isReceiving}
              tools={
                <>
                  <FilterField label="Part or order" value={search} onChange={(text) => setAddress({ search: text })} />
                  {mayReceive ? (
                    <Button onPress={() => setAddress({ line: '', without: 'order' })}>Receive without an order</Button>
                  ) : null}
                </>
              }
              hrefOf={(row) => `/receiving?line=${row.id}${search ? `&search=${encodeURIComponent(search)}` : ''}`}
            />
          </PagesFrame>
        </section>
        <WaitingLots />
        <HeldDeliveries />
      </div>
      {isReceiving ? <ReceiveSheet key={line} expected={expected} lineId={line} onClose={close} /> : null}
    </div>
  );
}
