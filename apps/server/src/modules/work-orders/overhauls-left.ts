import type { Reads } from '../../platform/database/reads.ts';
import { dimensionRows } from './dimension-rows.ts';
import { pastOf } from './past-dimensions.ts';

/** No work order: nothing measured is left out. */
const none = '00000000-0000-0000-0000-000000000000';

/** How many more overhauls the material of a blade may give, by its dimension that gives the fewest. */
export interface OverhaulsLeft {
  readonly position: string;
  readonly serial: string | null;
  readonly overhauls: number | 'unknown';
  readonly basis: string;
}

/** Of each blade in a unit, from what was measured of it on every visit; none of blades that were never measured here. An estimate. */
export async function overhaulsLeft(models: Reads['models'], unitId: string): Promise<OverhaulsLeft[]> {
  const fitted = await models.installation.findMany({
    where: { parentId: unitId, toDate: null, item: { kind: 'blade' } },
    orderBy: { position: 'asc' },
    include: { item: { select: { serial: true } } },
  });
  const itemIds = fitted.map(({ itemId }) => itemId);
  if (itemIds.length === 0) return [];
  const past = await pastOf(models, { itemIds, notOf: none });
  const travelers = await models.traveler.findMany({
    where: { itemId: { in: itemIds } },
    orderBy: { createdAt: 'desc' },
    distinct: ['itemId'],
    include: {
      steps: {
        where: { state: { not: 'not-needed' }, measures: { some: { dimension: { not: null } } } },
        orderBy: { sequence: 'asc' },
        select: { phase: true, measures: { orderBy: { sequence: 'asc' } } },
      },
    },
  });
  return fitted.flatMap(({ itemId, position, item }) => {
    const traveler = travelers.find((one) => one.itemId === itemId);
    const own = past.get(itemId);
    if (!traveler || !own) return [];
    const told = dimensionRows(traveler.steps, [], own).flatMap(({ name, unit, remaining }) =>
      remaining === null ? [] : [{ ...remaining, basis: `${name}, ${inUnit(remaining.basis, unit)}` }],
    );
    const known = told.filter(({ overhauls }) => overhauls !== 'unknown');
    const [least] = (known.length > 0 ? known : told).sort((a, b) => Number(a.overhauls) - Number(b.overhauls));
    return least ? [{ position, serial: item.serial, ...least }] : [];
  });
}

/** `0.2 removed in 2 overhauls` → `0.2 in removed in 2 overhauls`. */
function inUnit(basis: string, unit: string): string {
  return basis.replace(/^([\d.]+) removed/, `$1 ${unit} removed`);
}
