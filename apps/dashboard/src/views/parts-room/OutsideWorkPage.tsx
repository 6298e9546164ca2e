import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { useQueries, useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { z } from 'zod';
import { useMay, useMe } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { queryFor } from '../../api/query.ts';
import { suppliersQuery } from '../../features/purchasing/orders.ts';
import { LossTable } from '../../features/vendors/LossTable.tsx';
import { SendOut } from '../../features/vendors/send-out.tsx';
import { SendPieces } from '../../features/vendors/send-pieces.tsx';
import { VendorOrderSheet } from '../../features/vendors/VendorOrderSheet.tsx';
import { outsideWorkQuery, type RackPiece, type Vendor, vendorColumns } from '../../features/vendors/vendors.ts';
import { WaitingOutside } from '../../features/vendors/WaitingOutside.tsx';
import { useToday } from '../../format/use-today.ts';
import { useAddress } from '../../shell/use-address.ts';
import { Button } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { ExportButton } from '../../ui/ExportButton.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';
import { Tabs } from '../../ui/Tabs.tsx';

const sheets = ['waiting', 'out', 'late', 'back', 'lost'] as const;
const address = z.object({ sheet: z.enum(sheets).catch('waiting') });

function Orders({ state, empty }: { state: 'out' | 'late' | 'back'; empty: string }) {
  const me = useMe();
  const orders = usePages(vendorOperations.listVendorOrders, { state });
  return (
    <PagesFrame of={orders}>
      {orders.rows.length === 0 ? <EmptyState title={empty} /> : null}
      {orders.rows.length > 0 ? (
        <div className="row">
          <ExportButton
            caption={`Outside work ${state}`}
            columns={vendorColumns}
            rows={orders.rows.flatMap((order) => order.lines.map((line) => ({ order, line })))}
          />
        </div>
      ) : null}
      {orders.rows.map((order) => (
        <VendorOrderSheet key={order.id} order={order} signer={me} />
      ))}
    </PagesFrame>
  );
}

/** What lies in the racks of the work orders that have a part waiting. */
function useRacks(workOrderIds: readonly string[]) {
  const sheetsOf = useQueries({
    queries: workOrderIds.map((workOrderId) => queryFor(kitsOperations.buildSheet, { workOrderId })),
  });
  return (chosen: readonly string[]): RackPiece[] =>
    workOrderIds.flatMap((id, index) =>
      chosen.includes(id)
        ? (sheetsOf[index]?.data?.rack ?? []).map((lot) => ({
            lotId: lot.lotId,
            quantity: lot.quantity,
            words: `${lot.quantity} × ${lot.part.number} (${lot.lotCode})`,
          }))
        : [],
    );
}

/** Pieces of a unit that go out without a part: the units are those whose kits still take parts. */
function Loose({ vendors, today, onClose }: { vendors: readonly Vendor[]; today: string; onClose: () => void }) {
  const kits = usePages(kitsOperations.kitBoard, { state: 'open' }).rows;
  const [chosen, setChosen] = useState<string | null>(null);
  const piecesOf = useRacks(chosen ? [chosen] : []);
  const units = new Map(kits.map(({ workOrder: { id, number, customer } }) => [id, `${number}, ${customer}`]));
  return (
    <SendPieces
      units={[...units].map(([workOrderId, words]) => ({ workOrderId, words }))}
      workOrderId={chosen}
      onUnit={setChosen}
      offered={chosen ? piecesOf([chosen]) : []}
      {...{ vendors, today, onClose }}
    />
  );
}

/** Parts that wait for a vendor, parts that are out, and what came back. */
export function OutsideWorkPage() {
  const waiting = useSuspenseQuery(outsideWorkQuery).data.rows;
  const vendors = useSuspenseQuery(suppliersQuery).data.rows;
  const [{ sheet }, setAddress] = useAddress(address);
  const [isSending, setSending] = useState<'parts' | 'pieces'>();
  const maySend = useMay(vendorOperations.sendToVendor);
  const today = useToday();
  const piecesOf = useRacks([...new Set(waiting.map(({ workOrderId }) => workOrderId))].slice(0, 20));
  const canGo = waiting.some(({ blocked }) => blocked === null);
  return (
    <div className="sheet">
      <Tabs
        label="Outside work"
        selected={sheet}
        onSelect={(id) => setAddress({ sheet: id as (typeof sheets)[number] })}
        sheets={[
          {
            id: 'waiting',
            title: `Waiting to go (${waiting.length})`,
            content: (
              <div className="stack">
                {maySend ? (
                  <div className="row actions">
                    <Button weight="next" isDisabled={!canGo} onPress={() => setSending('parts')}>
                      Send parts to a vendor
                    </Button>
                    <Button onPress={() => setSending('pieces')}>Send pieces without a part</Button>
                  </div>
                ) : null}
                <WaitingOutside rows={waiting} />
              </div>
            ),
          },
          { id: 'out', title: 'Out', content: <Orders state="out" empty="Nothing is at a vendor" /> },
          { id: 'late', title: 'Late', content: <Orders state="late" empty="No vendor is late" /> },
          { id: 'back', title: 'Back', content: <Orders state="back" empty="Nothing has come back yet" /> },
          { id: 'lost', title: 'Lost', content: <LossTable of={{}} /> },
        ]}
      />
      {isSending === 'pieces' ? <Loose vendors={vendors} today={today} onClose={() => setSending(undefined)} /> : null}
      {isSending === 'parts' ? (
        <SendOut
          waiting={waiting}
          vendors={vendors}
          today={today}
          piecesOf={piecesOf}
          onClose={() => setSending(undefined)}
        />
      ) : null}
    </div>
  );
}
