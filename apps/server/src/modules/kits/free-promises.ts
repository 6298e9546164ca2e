import type { Subject } from '../../platform/command/command.ts';
import type { KitContext } from './kit.ts';

/**
 * The work will not be done: what was promised to its kits is free again at once. The kits stay open, so that tray and rack can
 * still be cleared. Answers the kits it changed, for their record chains.
 */
export async function freePromises({ tx }: Pick<KitContext, 'tx'>, workOrderId: string): Promise<Subject[]> {
  const kits = await tx.kit.findMany({ where: { workOrderId, state: 'open' }, orderBy: { id: 'asc' } });
  const changed: Subject[] = [];
  for (const kit of kits) {
    const { count } = await tx.reservation.deleteMany({ where: { kitLine: { kitId: kit.id } } });
    if (count === 0) continue;
    await tx.kit.update({ where: { id: kit.id }, data: { version: { increment: 1 } } });
    changed.push({ kind: 'kit', id: kit.id, before: kit.version, after: kit.version + 1 });
  }
  return changed;
}
