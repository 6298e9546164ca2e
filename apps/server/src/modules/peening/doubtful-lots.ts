import type { Tx } from '../../platform/database/client.ts';

interface Doubtful {
  readonly lot_id: string;
  readonly lot: string;
  readonly work_order_id: string;
  readonly work_order: string;
  readonly parts: readonly string[];
}

/**
 * Lots begun with a media lot since its last good check, unit by unit: nobody knows from when on the media was bad. Those that
 * were broken up or peened again anyway are left out, and those that already wait for a decision.
 */
export function doubtfulLots(tx: Tx, mediaId: string): Promise<Doubtful[]> {
  return tx.$queryRaw<Doubtful[]>`
    SELECT l.id::text AS lot_id, l.number AS lot, w.id::text AS work_order_id, w.number AS work_order,
      array_agg(t.number || ' ' || t.position ORDER BY t.number) AS parts
    FROM peening_lots l JOIN peening_parts p ON p.lot_id = l.id JOIN traveler_steps s ON s.id = p.step_id
    JOIN travelers t ON t.id = s.traveler_id JOIN work_orders w ON w.id = t.work_order_id
    WHERE l.media_id = ${mediaId}::uuid AND l.state IN ('open', 'peened', 'released', 'held')
      AND l.started_at > coalesce((SELECT max(c.checked_at) FROM peening_checks c WHERE c.media_id = l.media_id AND c.passed), '-infinity')
      AND NOT EXISTS (SELECT 1 FROM peening_reviews r WHERE r.lot_id = l.id AND r.work_order_id = w.id
        AND (r.decision IS NULL OR r.decision = 'peen-again'))
    GROUP BY l.id, w.id ORDER BY l.number, w.number LIMIT 500`;
}

/** Parts of a work order in lots whose media failed its check, on which nobody decided, in sentences. */
export async function undecidedDoubts(tx: Pick<Tx, 'peeningReview'>, workOrderId: string): Promise<string[]> {
  const reviews = await tx.peeningReview.findMany({
    where: { workOrderId, decision: null, lot: { state: { notIn: ['redone', 'broken-up'] } } },
    include: { lot: true, check: { include: { media: true } } },
    orderBy: { id: 'asc' },
    take: 100,
  });
  return reviews.map(
    ({ lot, check }) =>
      `Peening lot ${lot.number}: media ${check.media.code} then failed its check; nobody decided yet`,
  );
}
