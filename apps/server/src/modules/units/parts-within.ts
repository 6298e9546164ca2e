import { Problem } from '@hubwright/contracts/problems';
import type { SerializedItem } from '../../platform/database/generated/client.ts';
import type { Reads } from '../../platform/database/reads.ts';

type Models = Pick<Reads['models'], 'installation'>;

/** A part that sits in a unit now, at whatever depth. */
interface PartWithin {
  readonly unitId: string;
  /** What it sits in itself: the unit, or a part of it. */
  readonly parentId: string;
  readonly itemId: string;
  /** Its own place, and behind it those of what it sits in: `clamp of blade 1`. */
  readonly position: string;
  /** 1 for what sits in the unit itself. */
  readonly level: number;
  readonly fromDate: Date;
  readonly item: SerializedItem;
}

/** Everything that sits in some units now, each part followed by its own parts: a statement for each level, however many they are. */
export async function partsWithin(models: Models, unitIds: readonly string[]): Promise<PartWithin[]> {
  const seen = new Set(unitIds);
  const inside = new Map<string, Awaited<ReturnType<typeof sitting>>>();
  let level = [...seen];
  while (level.length > 0) {
    const rows = await sitting(models, level);
    for (const id of level) inside.set(id, []);
    for (const row of rows) inside.get(row.parentId)?.push(row);
    level = rows.map(({ itemId }) => itemId).filter((id) => !seen.has(id));
    for (const id of level) seen.add(id);
  }
  const under = (unitId: string, parentId: string, above: { level: number; place: string }): PartWithin[] =>
    (inside.get(parentId) ?? []).flatMap(({ itemId, position: own, fromDate, item }) => {
      const position = above.place === '' ? own : `${own} of ${above.place}`;
      const part = { unitId, parentId, itemId, position, fromDate, item, level: above.level + 1 };
      return [part, ...under(unitId, itemId, { level: part.level, place: position })];
    });
  return unitIds.flatMap((id) => under(id, id, { level: 0, place: '' }));
}

function sitting(models: Models, parentIds: readonly string[]) {
  return models.installation.findMany({
    where: { parentId: { in: [...parentIds] }, toDate: null },
    orderBy: { position: 'asc' },
    include: { item: true },
  });
}

/** Refuses to put an item into what sits in it, or into itself. */
export async function refuseInItself(models: Models, placed: { itemId: string; parentId: string }): Promise<void> {
  const { itemId, parentId } = placed;
  const own = itemId === parentId ? [] : await partsWithin(models, [itemId]);
  if (itemId !== parentId && !own.some((part) => part.itemId === parentId)) return;
  const detail = 'It cannot sit in itself, or in what sits in it';
  throw new Problem('invalid-input', detail, {}, [{ pointer: '/parentId', detail }]);
}
