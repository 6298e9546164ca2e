import type { Tx } from '../../platform/database/client.ts';

/** Readings of a work order that were taken with an instrument found out of tolerance, and that nobody decided on or took again. */
export async function openReviews(tx: Tx, workOrderId: string) {
  return tx.$queryRaw<{ id: string; tag: string; what: string; decision: string | null }[]>`
    SELECT r.id::text, i.tag, coalesce(t.position || ', ' || s.title, o.subject_kind) AS what, r.decision
    FROM calibration_reviews r JOIN instruments i ON i.id = r.instrument_id JOIN sign_offs o ON o.id = r.sign_off_id
    LEFT JOIN traveler_steps s ON s.id = o.step_id LEFT JOIN travelers t ON t.id = s.traveler_id
    WHERE r.work_order_id = ${workOrderId}::uuid AND (r.decision IS NULL OR r.decision = 'measure-again')
      AND NOT EXISTS (SELECT 1 FROM sign_offs n WHERE n.supersedes_id = o.id)
    ORDER BY r.id LIMIT 100`;
}
