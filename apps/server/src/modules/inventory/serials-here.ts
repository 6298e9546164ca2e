import type { Reads } from '../../platform/database/reads.ts';

/** Which of these serials are on a piece that is here, whatever the part: lot codes by `part serial`. */
export async function serialsHere(
  models: Pick<Reads['models'], 'lot'>,
  serials: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  const lots = await models.lot.findMany({
    where: {
      serial: { in: [...new Set(serials)] },
      balances: { some: { onHand: { gt: 0 }, placeKind: { not: 'scrap' } } },
    },
    select: { code: true, partId: true, serial: true },
  });
  return new Map(lots.map(({ code, partId, serial }) => [`${partId} ${serial}`, code]));
}
