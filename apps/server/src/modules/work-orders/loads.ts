import { Problem } from '@hubwright/contracts/problems';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { equipmentLocks } from '../processes/public.ts';

/** An open load with its parts in the order they were put in. Throws `load-ended`. */
export async function openLoad(tx: Tx, loadId: string, expectedVersion: number | undefined) {
  const load = found(
    await tx.load.findUnique({
      where: { id: loadId },
      include: { parts: { where: { open: true }, orderBy: { id: 'asc' } } },
    }),
    'This load',
  );
  if (load.state !== 'open') throw new Problem('load-ended', `${load.number} was ${load.state.replace('-', ' ')}`);
  sameVersion(load.version, expectedVersion);
  return load;
}

/** The load itself and every work order that has a part in it. */
export async function loadLocks(tx: Tx, loadId: string): Promise<string[]> {
  const parts = await tx.loadPart.findMany({ where: { loadId, open: true }, select: { stepId: true } });
  const load = await tx.load.findUnique({ where: { id: loadId }, select: { equipmentId: true } });
  return [
    `load:${loadId}`,
    ...equipmentLocks(load?.equipmentId),
    ...(await workOrderLocks(
      tx,
      parts.map(({ stepId }) => stepId),
    )),
  ];
}

/** Locks of the work orders that these steps belong to. */
export async function workOrderLocks(tx: Tx, stepIds: readonly string[]): Promise<string[]> {
  const travelers = await tx.traveler.findMany({
    where: { steps: { some: { id: { in: [...stepIds] } } } },
    select: { workOrderId: true },
  });
  return [...new Set(travelers.map(({ workOrderId }) => `work-order:${workOrderId}`))];
}
