import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { queryFor } from '../../api/query.ts';
import { formatDate } from '../../format/dates.ts';
import { Button } from '../../ui/Button.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { say } from '../../ui/toasts.tsx';
import type { KitLine } from './kit-detail.ts';

type Lots = {
  rows: { id: string; code: string; onHand: number; expiresOn: string | null; part: { number: string } }[];
};

function lotsFound({ rows }: Lots): readonly Found[] {
  return rows
    .filter((lot) => lot.onHand > 0)
    .map(({ id, code, onHand, expiresOn, part }) => ({
      id,
      name: code,
      detail: `${part.number}, ${onHand} there${expiresOn ? `, not from ${formatDate(expiresOn)} on` : ''}`,
    }));
}

/** Promises stock to one line: by the rule (earliest expiry first, the part before its alternates), or one lot by name. */
export function ReserveLine({ kitId, line }: { kitId: string; line: KitLine }) {
  const reserve = useCommand(kitsOperations.reserveLine);
  const [lot, setLot] = useState<Found | null>(null);
  const send = (lotId?: string) =>
    reserve.mutate(
      { input: { kitId, lineId: line.id, ...(lotId ? { lotId } : {}) } },
      {
        onSuccess: ({ reserved }) => {
          setLot(null);
          say(`Promised: ${reserved.map((each) => `${each.quantity} of ${each.lotCode}`).join(', ')}.`);
        },
      },
    );
  return (
    <div className="stack">
      <div className="row">
        <Button isPending={reserve.isPending} onPress={() => send()}>
          Promise by the rule
        </Button>
        <span className="small soft">Earliest expiry first, the part itself before its alternates.</span>
      </div>
      <SearchBox
        label="Or one certain lot"
        hint="Lot, part number or supplier’s lot"
        picked={lot}
        onPick={setLot}
        search={(text) =>
          queryFor(inventoryOperations.listLots, { search: text || line.part.number, state: 'accepted', limit: 20 })
        }
        found={lotsFound}
      />
      {lot ? (
        <Button isPending={reserve.isPending} onPress={() => send(lot.id)}>
          Promise {lot.name}
        </Button>
      ) : null}
      {reserve.error ? <Refusal problem={reserve.error} /> : null}
    </div>
  );
}
