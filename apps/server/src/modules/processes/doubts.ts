import type { Operation } from '@hubwright/contracts/operation';
import { inDoubt } from '@hubwright/rules/fitness';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';

/** Far more readings than lie between two good ones; with fewer known, more is in doubt, never less. */
const newestKnown = 1000;

/**
 * Puts every standing good sign-off in doubt that was made with the equipment since the last good result of a quantity read bad.
 * Answers how many.
 */
export async function raiseDoubts(
  { tx, newId, now }: Pick<Context<Operation>, 'tx' | 'newId' | 'now'>,
  bad: { id: string; equipmentId: string; quantity: string; takenAt: Date },
): Promise<number> {
  const readings = await tx.equipmentReading.findMany({
    where: { equipmentId: bad.equipmentId, quantity: bad.quantity },
    orderBy: { takenAt: 'desc' },
    take: newestKnown,
    select: { takenAt: true, good: true },
  });
  const { after, before } = inDoubt(
    readings.map(({ takenAt, good }) => ({ at: takenAt.getTime(), good })),
    bad.takenAt.getTime(),
  );
  const rows = await tx.$queryRaw<{ id: string; work_order_id: string }[]>`
    SELECT s.id::text, s.work_order_id::text FROM sign_offs s
    WHERE s.equipment_id = ${bad.equipmentId}::uuid AND s.result = 'pass' AND s.countersigns_id IS NULL
      AND s.performed_at >= ${new Date(after ?? 0)} AND s.performed_at < ${before === undefined ? new Date('9999-01-01') : new Date(before)}
      AND NOT EXISTS (SELECT 1 FROM sign_offs n WHERE n.supersedes_id = s.id)
      AND NOT EXISTS (SELECT 1 FROM equipment_doubts d JOIN equipment_readings r ON r.id = d.reading_id
        WHERE d.sign_off_id = s.id AND d.equipment_id = s.equipment_id AND r.quantity = ${bad.quantity})
    ORDER BY s.performed_at, s.id`;
  await tx.equipmentDoubt.createMany({
    data: rows.map((row) => ({
      ...{ id: newId(), equipmentId: bad.equipmentId, readingId: bad.id, raisedAt: now },
      ...{ signOffId: row.id, workOrderId: row.work_order_id },
    })),
  });
  return rows.length;
}

/** Work on a unit that nobody has answered for, in sentences: each keeps it from its release. */
export async function openDoubts(tx: Tx, workOrderId: string) {
  return tx.$queryRaw<{ id: string; what: string; process: string }[]>`
    SELECT d.id::text, e.process, t.position || ', ' || s.title || ': went through ' || e.code || ' before ' || r.quantity || ' was read '
      || trim(r.value || ' ' || r.unit) AS what
    FROM equipment_doubts d JOIN equipment e ON e.id = d.equipment_id JOIN equipment_readings r ON r.id = d.reading_id
    JOIN sign_offs o ON o.id = d.sign_off_id JOIN traveler_steps s ON s.id = o.step_id JOIN travelers t ON t.id = s.traveler_id
    WHERE d.work_order_id = ${workOrderId}::uuid AND d.decision IS NULL AND t.disposition IS DISTINCT FROM 'reject'
    ORDER BY d.id LIMIT 100`;
}
