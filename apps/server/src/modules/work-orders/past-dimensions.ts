import { dateIn } from '../../platform/command/clock.ts';
import type { Reads } from '../../platform/database/reads.ts';
import type { Past } from './dimension-rows.ts';
import { dimensionKey, zoneName } from './measured.ts';

/** The most readings of earlier visits that are looked at; a blade has about twenty a visit. */
const most = 10_000;

/** How parts left earlier visits, oldest first: the last standing reading of each dimension on each work order, by item. */
export async function pastOf(
  tx: Pick<Reads['models'], 'measurement' | 'signOff' | 'shopProfile'>,
  { itemIds, notOf }: { itemIds: readonly string[]; notOf: string },
): Promise<Map<string, Past[]>> {
  const rows = await earlierReadings(tx, itemIds, notOf);
  const newer = await tx.signOff.findMany({
    where: { supersedesId: { in: [...new Set(rows.map(({ signOffId }) => signOffId))] } },
    select: { supersedesId: true },
  });
  const superseded = new Set(newer.map(({ supersedesId }) => supersedesId));
  const zone = (await tx.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } }))?.zone ?? 'UTC';
  const seen = new Set<string>();
  const past = new Map<string, Past[]>();
  for (const { measure, value, signOff } of rows) {
    const traveler = signOff.step?.traveler;
    if (!traveler || superseded.has(signOff.id)) continue;
    const key = dimensionKey(measure.dimension ?? '', measure.station, zoneName(measure.zone));
    const once = `${traveler.id} ${key}`;
    if (seen.has(once)) continue;
    seen.add(once);
    const { number: workOrderNumber } = traveler.workOrder;
    const of = past.get(traveler.itemId) ?? [];
    past.set(traveler.itemId, [{ key, on: dateIn(zone, signOff.signedAt), workOrderNumber, value }, ...of]);
  }
  return past;
}

/** Newest first, so that what is left out is the oldest. */
function earlierReadings(tx: Pick<Reads['models'], 'measurement'>, itemIds: readonly string[], notOf: string) {
  return tx.measurement.findMany({
    where: {
      measure: { dimension: { not: null } },
      signOff: {
        countersignsId: null,
        workOrderId: { not: notOf },
        step: {
          traveler: { itemId: { in: [...itemIds] }, OR: [{ disposition: null }, { disposition: { not: 'reject' } }] },
        },
      },
    },
    orderBy: [{ signOff: { signedAt: 'desc' } }, { id: 'desc' }],
    take: most,
    include: {
      measure: true,
      signOff: { include: { step: { include: { traveler: { include: { workOrder: true } } } } } },
    },
  });
}
