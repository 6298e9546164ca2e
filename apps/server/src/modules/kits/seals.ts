import type { Ask } from './ask.ts';

/** A seal that is in the unit, by the line of the kit it came for. */
export interface SealInUnit {
  readonly lineId: string;
  readonly kitId: string;
  readonly kitCode: string;
  readonly position: string;
  /** As the kit list names it, without the blade. */
  readonly listed: string;
  readonly part: {
    readonly id: string;
    readonly number: string;
    readonly description: string;
    readonly issueUnit: string;
  };
  readonly quantity: number;
  readonly unitPrice: string;
}

// Only lines that take new pieces: a seal is never the unit’s own again.
const sealsSql = `
  SELECT kl.id AS "lineId", k.id AS "kitId", k.code AS "kitCode", kl.position, coalesce(ll.position, kl.position) AS listed,
    json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part,
    m.installed AS quantity, p.unit_price AS "unitPrice"
  FROM kit_lines kl JOIN kits k ON k.id = kl.kit_id JOIN parts p ON p.id = kl.part_id LEFT JOIN kit_list_lines ll ON ll.id = kl.list_line_id
  CROSS JOIN LATERAL (
    SELECT coalesce(sum(CASE 'unit' WHEN to_kind THEN quantity WHEN from_kind THEN -quantity END), 0)::int AS installed
    FROM movements WHERE kit_line_id = kl.id) m
  WHERE k.work_order_id = $1::uuid AND k.state <> 'cancelled' AND kl.source = 'new' AND p.class = 'seal' AND m.installed > 0
  ORDER BY k.created_at, kl.sequence`;

export function sealsInUnit(ask: Ask, workOrderId: string): Promise<SealInUnit[]> {
  return ask<SealInUnit>(sealsSql, [workOrderId]);
}
