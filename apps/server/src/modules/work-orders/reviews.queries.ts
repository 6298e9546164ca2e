import type { Input, Reply } from '@hubwright/contracts/operation';
import type { reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';

type Row = Reply<typeof reviewOperations.listCalibrationReviews>['rows'][number];

type Found = Omit<Row, 'workOrder' | 'performedAt' | 'decidedAt'> & {
  readonly workOrder: { id: string; number: string; stage: string };
  readonly releasedAt: Date | null;
  readonly performedAt: Date;
  readonly decidedAt: Date | null;
};

@Injectable()
export class ReviewQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(
    input: Input<typeof reviewOperations.listCalibrationReviews>,
  ): Promise<Reply<typeof reviewOperations.listCalibrationReviews>> {
    const { instrumentId = null, workOrderId = null, show, after = null, limit } = input;
    const found = await this.reads.sql<Found>(reviewsSql, [instrumentId, workOrderId, show, after, limit + 1]);
    const shown = found.slice(0, limit);
    return {
      rows: shown.map(({ workOrder, releasedAt, performedAt, decidedAt, ...row }) => ({
        ...row,
        workOrder: { ...workOrder, releasedAt: releasedAt?.toISOString() ?? null },
        performedAt: performedAt.toISOString(),
        decidedAt: decidedAt?.toISOString() ?? null,
      })),
      next: found.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}

/** $1 instrument, $2 work order, $3 open or all, $4 the last id seen, $5 most rows. Ids are made in time's order. */
const reviewsSql = `
  SELECT r.id::text, json_build_object('id', i.id, 'tag', i.tag, 'title', i.title) AS instrument, c.calibrated_on::text AS "foundOn",
    json_build_object('id', w.id, 'number', w.number, 'stage', w.stage) AS "workOrder", w.released_at AS "releasedAt",
    k.name AS customer, json_build_object('designation', m.designation, 'serial', coalesce(u.serial, u.provisional_name, '')) AS unit,
    CASE WHEN t.id IS NOT NULL THEN json_build_object('id', t.id, 'number', t.number, 'position', t.position) END AS traveler,
    s.id::text AS "stepId", coalesce(s.title, o.subject_kind) AS what, p.display_name AS person, o.performed_at AS "performedAt",
    coalesce((SELECT json_agg(json_build_object('name', sm.name, 'value', v.value, 'unit', sm.unit, 'low', sm.low, 'high', sm.high)
        ORDER BY sm.sequence)
      FROM measurements v JOIN step_measures sm ON sm.id = v.measure_id WHERE v.sign_off_id = o.id), '[]') AS values,
    r.decision, r.reason, d.display_name AS "decidedBy", r.decided_at AS "decidedAt", r.version,
    EXISTS (SELECT 1 FROM sign_offs n WHERE n.supersedes_id = o.id) AS "measuredAgain"
  FROM calibration_reviews r JOIN calibrations c ON c.id = r.calibration_id JOIN instruments i ON i.id = r.instrument_id
  JOIN sign_offs o ON o.id = r.sign_off_id JOIN people p ON p.id = o.person_id JOIN work_orders w ON w.id = r.work_order_id
  JOIN customers k ON k.id = w.customer_id JOIN unit_models m ON m.id = w.model_id JOIN serialized_items u ON u.id = w.unit_id
  LEFT JOIN traveler_steps s ON s.id = o.step_id LEFT JOIN travelers t ON t.id = s.traveler_id LEFT JOIN people d ON d.id = r.decided_by
  WHERE ($1::uuid IS NULL OR r.instrument_id = $1) AND ($2::uuid IS NULL OR r.work_order_id = $2)
    AND ($3 = 'all' OR ((r.decision IS NULL OR r.decision = 'measure-again')
      AND NOT EXISTS (SELECT 1 FROM sign_offs n WHERE n.supersedes_id = o.id)))
    AND ($4::text IS NULL OR r.id::text > $4)
  ORDER BY r.id LIMIT $5`;
