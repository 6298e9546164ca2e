import type { Input } from '@hubwright/contracts/operation';
import type { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';

const heldSql = `
  SELECT h.id, h.number, h.state, h.cause, h.what, h.quantity, h.delivery_note AS "deliveryNote", h.note, h.version,
    to_char(h.held_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS "heldAt", h.returned_on::text AS "returnedOn", h.return_note AS "returnNote",
    CASE WHEN s.id IS NOT NULL THEN json_build_object('id', s.id, 'name', s.name) END AS supplier,
    CASE WHEN o.id IS NOT NULL THEN json_build_object('id', o.id, 'number', o.number) END AS "order",
    json_build_object('id', p.id, 'displayName', p.display_name) AS "heldBy"
  FROM held_deliveries h JOIN people p ON p.id = h.held_by LEFT JOIN suppliers s ON s.id = h.supplier_id
  LEFT JOIN purchase_orders o ON o.id = h.order_id
  WHERE h.state = $1 AND ($2::uuid IS NULL OR h.order_id = $2) AND ($3::text IS NULL OR h.number > $3)
  ORDER BY h.number LIMIT $4`;

@Injectable()
export class HeldQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(input: Input<typeof heldOperations.listHeld>) {
    const { state, orderId, after, limit } = input;
    const rows = await this.reads.sql<{ number: string }>(heldSql, [state, orderId ?? null, after ?? null, limit + 1]);
    const shown = rows.slice(0, limit);
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null };
  }
}
