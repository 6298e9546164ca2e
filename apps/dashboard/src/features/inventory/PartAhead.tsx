import { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { useQueries, useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { BarOverTime } from '../../ui/pictures/BarOverTime.tsx';
import { type Lot, lotQuery, type Part } from './lots.ts';
import { partOverTime } from './part-over-time.ts';

const mostLots = 25;

function usePromisesAndExpiry(partId: string) {
  const lots = useQuery(queryFor(inventoryOperations.listLots, { partId, state: 'accepted', limit: 100 }));
  const held = (lots.data?.rows ?? []).filter((lot) => lot.onHand > 0).slice(0, mostLots);
  const details = useQueries({ queries: held.map((lot) => lotQuery(lot.id)) });
  return { held, read: details.flatMap((each): Lot[] => (each.data ? [each.data] : [])) };
}

/** Have, on order and short of one part over the coming weeks, from its promises, open orders and the shortages of kits. */
export function PartAhead({ part, today }: { part: Part; today: string }) {
  const { held, read } = usePromisesAndExpiry(part.id);
  const due =
    useQuery(queryFor(purchasingOperations.expectedDeliveries, { partId: part.id, limit: 100 })).data?.rows ?? [];
  const shortages = useQuery(queryFor(kitsOperations.shortages, { search: part.number, limit: 50 })).data?.rows ?? [];
  const isUsable = (lot: { expiresOn: string | null }) => lot.expiresOn === null || lot.expiresOn > today;
  const promised = (lot: Lot) => lot.reservations.reduce((sum, each) => sum + each.quantity, 0);
  const days = partOverTime(today, {
    have: held.filter(isUsable).reduce((sum, lot) => sum + lot.onHand, 0),
    promised: read
      .filter(isUsable)
      .flatMap((lot) => lot.reservations.map(({ needBy, quantity }) => ({ date: needBy, quantity }))),
    expiring: read.filter(isUsable).flatMap((lot) => {
      return lot.expiresOn ? [{ date: lot.expiresOn, quantity: Math.max(0, lot.onHand - promised(lot)) }] : [];
    }),
    due: due.map(({ dueOn, open }) => ({ date: dueOn, quantity: open })),
    short: shortages
      .filter((row) => row.part.id === part.id)
      .flatMap((row) => row.kits.map(({ needBy, quantity }) => ({ date: needBy, quantity }))),
  });
  return (
    <figure className="stack tight">
      <figcaption className="small soft">
        Over the coming ten weeks: what stays on the shelf after what is promised (filled), what will have come
        (hatched), what kits will be short of (hollow, below the line).
      </figcaption>
      <BarOverTime title={`${part.number} over the coming weeks`} days={days} />
    </figure>
  );
}
