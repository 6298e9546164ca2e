import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';
import { binOrQuarantine, type Place, type PlaceKind } from './place.ts';

interface Labelled {
  readonly id: string;
  readonly code: string;
}

/** What is done first with pieces that lie where labels are neither parted nor joined. */
const firstDo: Partial<Record<PlaceKind, string>> = {
  receiving: 'they are still being received; take them in first',
  tray: 'they are in a tray; bring them back to a bin first',
  rack: 'they are the unit’s own in its rack, under the label of the position they came off',
  unit: 'they are in a unit; take them out and bring them back to a bin first',
  vendor: 'they are at a vendor, whose order names this label; take them back first',
  scrap: 'they are scrapped',
  lost: 'a vendor lost them',
  supplier: 'they are back at the supplier',
  customer: 'their owner has them',
  count: 'a count did not find them',
  'other-lot': 'they are under another label already',
};

/** Throws `not-divided-here` for a place in which labels are neither parted nor joined, with what to do first. */
function refuseHere({ code }: Labelled, kind: PlaceKind): void {
  const why = firstDo[kind];
  if (why) throw new Problem('not-divided-here', `${code}: ${why}`, { lot: code, place: kind });
}

/** Throws `already-surrendered` for what the owner gave up: the letter names this label, and nothing else is destroyed by it. */
export async function refuseGivenUp(tx: Tx, lots: readonly Labelled[]): Promise<void> {
  const letter = await tx.surrender.findFirst({ where: { lotId: { in: lots.map(({ id }) => id) } } });
  const lot = lots.find(({ id }) => id === letter?.lotId);
  if (lot) throw new Problem('already-surrendered', `${lot.code} was given up by ${letter?.letter}`, { lot: lot.code });
}

/** The place the pieces are split in: a bin, quarantine, or where they are held for their owner. */
export async function dividedAt(
  tx: Tx,
  lot: Labelled,
  { place, bin }: { place?: PlaceKind | undefined; bin?: string | undefined },
): Promise<Place> {
  if (place) refuseHere(lot, place);
  if (place !== 'held') return binOrQuarantine(bin);
  const held = await tx.balance.findFirst({ where: { lotId: lot.id, placeKind: 'held', onHand: { gt: 0 } } });
  if (!held) throw new Problem('not-enough', `Nothing of ${lot.code} is held for its owner`, { lot: lot.code });
  await refuseGivenUp(tx, [lot]);
  return { kind: 'held', ref: held.placeRef };
}

/** What of a lot can go under another label, place by place. Throws why nothing of it can. */
export async function joinable(tx: Tx, lot: Labelled): Promise<{ place: Place; quantity: number }[]> {
  const all = await tx.balance.findMany({
    where: { lotId: lot.id, onHand: { gt: 0 } },
    orderBy: [{ placeKind: 'asc' }, { placeRef: 'asc' }],
  });
  const here = all.filter(({ placeKind }) => firstDo[placeKind as PlaceKind] === undefined);
  if (here.length > 0)
    return here.map(({ placeKind, placeRef, onHand }) => ({
      place: { kind: placeKind as PlaceKind, ref: placeRef },
      quantity: onHand,
    }));
  for (const { placeKind } of all) refuseHere(lot, placeKind as PlaceKind);
  throw new Problem('not-enough', `Nothing of ${lot.code} is here any more`, { lot: lot.code });
}
