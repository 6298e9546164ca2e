import type { fieldReviewOperations } from '@hubwright/contracts/field-balance/review-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';

type Rows = Reply<typeof fieldReviewOperations.listFieldReviews>;
type Found = Omit<Rows['rows'][number], 'signedAt' | 'decidedAt'> & {
  readonly signedAt: Date;
  readonly decidedAt: Date | null;
};

@Injectable()
export class FieldReviewQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(input: Input<typeof fieldReviewOperations.listFieldReviews>): Promise<Rows> {
    const { instrumentId = null, fieldBalanceId = null, show, after = null, limit } = input;
    const found = await this.reads.sql<Found>(reviewsSql, [instrumentId, fieldBalanceId, show, after, limit + 1]);
    const shown = found.slice(0, limit);
    return {
      rows: shown.map(({ signedAt, decidedAt, ...row }) => ({
        ...row,
        ...{ signedAt: signedAt.toISOString(), decidedAt: decidedAt?.toISOString() ?? null },
      })),
      next: found.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}

const answered = `(b.state = 'abandoned' OR EXISTS (SELECT 1 FROM field_signatures n
  WHERE n.field_balance_id = b.id AND n.kind = 'set-up' AND n.signed_at > s.signed_at))`;

/** $1 instrument, $2 balance, $3 open or all, $4 the last id seen, $5 most rows. Ids are made in time's order. */
const reviewsSql = `
  SELECT r.id::text, json_build_object('id', i.id, 'tag', i.tag, 'title', i.title) AS instrument, c.calibrated_on::text AS "foundOn",
    json_build_object('id', b.id, 'number', b.number, 'state', b.state) AS "fieldBalance", k.name AS customer,
    a.registration AS aircraft, json_build_object('designation', m.designation, 'serial', coalesce(u.serial, '')) AS propeller,
    s.kind AS signed, p.display_name AS person, s.signed_at AS "signedAt", coalesce(d.data ->> 'unit', '') AS unit,
    coalesce(s.content -> 'after', (SELECT f.readings FROM field_runs f WHERE f.set_up_id = s.id ORDER BY f.sequence DESC LIMIT 1)) AS readings,
    r.decision, r.reason, e.display_name AS "decidedBy", r.decided_at AS "decidedAt", r.version, ${answered} AS answered
  FROM field_reviews r JOIN calibrations c ON c.id = r.calibration_id JOIN instruments i ON i.id = r.instrument_id
  JOIN field_signatures s ON s.id = r.field_signature_id JOIN people p ON p.id = s.person_id
  JOIN field_balances b ON b.id = r.field_balance_id JOIN customers k ON k.id = b.customer_id JOIN aircraft a ON a.id = b.aircraft_id
  JOIN serialized_items u ON u.id = b.unit_id JOIN unit_models m ON m.id = u.model_id
  LEFT JOIN field_balance_specs d ON d.id = b.spec_id LEFT JOIN people e ON e.id = r.decided_by
  WHERE ($1::uuid IS NULL OR r.instrument_id = $1) AND ($2::uuid IS NULL OR r.field_balance_id = $2)
    AND ($3 = 'all' OR ((r.decision IS NULL OR r.decision = 'measure-again') AND NOT ${answered}))
    AND ($4::text IS NULL OR r.id::text > $4)
  ORDER BY r.id LIMIT $5`;
