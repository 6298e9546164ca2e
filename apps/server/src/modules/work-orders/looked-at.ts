import { Problem } from '@hubwright/contracts/problems';
import type { Tx } from '../../platform/database/client.ts';

/** The subject of the preliminary inspection's signature. */
export const receivingSubject = 'work-order';

/** The signed preliminary inspection of a work order, or null. */
export function preliminaryInspection(tx: Tx, workOrderId: string) {
  return tx.signOff.findFirst({ where: { workOrderId, subjectKind: receivingSubject, subjectId: workOrderId } });
}

/** Throws `not-looked-at` until the preliminary inspection is signed: nobody strips a unit that nobody looked at. */
export async function requireLookedAt(tx: Tx, workOrder: { id: string; number: string }): Promise<void> {
  if (await preliminaryInspection(tx, workOrder.id)) return;
  throw new Problem('not-looked-at', `The preliminary inspection of ${workOrder.number} is not signed`);
}
