import type { Input, Reply } from '@hubwright/contracts/operation';
import type { lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';

type Losses = Reply<typeof lossOperations.listVendorLosses>;
type Row = Omit<Losses['rows'][number], 'at'> & { readonly at: Date };

const lossesSql = `
  SELECT x.id, x.at, x.how, x.vendor_paper AS "vendorPaper", x.reason, x.quantity,
    coalesce(p.number || ' ' || p.description, i.part_number || ', ' || replace(t.part_class, '-', ' ')) AS part,
    CASE WHEN l.id IS NULL THEN NULL ELSE json_build_object('id', l.id, 'code', l.code) END AS lot,
    coalesce(l.serial, i.serial) AS serial,
    coalesce(t.position, (SELECT string_agg(DISTINCT m.position, ', ') FROM movements m
      WHERE m.lot_id = l.id AND m.to_kind = 'lost' AND m.entry_id = x.entry_id), '') AS position,
    c.name AS owner, s.name AS vendor, o.number AS "order", json_build_object('id', w.id, 'number', w.number) AS "workOrder",
    coalesce(a.display_name, '') AS "writtenOffBy", b.display_name AS witness
  FROM vendor_losses x
  JOIN vendor_orders o ON o.id = x.order_id JOIN suppliers s ON s.id = o.supplier_id
  JOIN work_orders w ON w.id = x.work_order_id JOIN customers c ON c.id = x.owner_id
  LEFT JOIN lots l ON l.id = x.lot_id LEFT JOIN parts p ON p.id = l.part_id
  LEFT JOIN vendor_lines vl ON vl.id = x.line_id LEFT JOIN traveler_steps ts ON ts.id = vl.step_id
  LEFT JOIN travelers t ON t.id = ts.traveler_id LEFT JOIN serialized_items i ON i.id = t.item_id
  LEFT JOIN people a ON a.id = x.person_id LEFT JOIN people b ON b.id = x.witness_id
  WHERE ($1::uuid IS NULL OR x.work_order_id = $1) AND ($2::uuid IS NULL OR w.unit_id = $2)
    AND ($3::uuid IS NULL OR x.id < $3)
  ORDER BY x.id DESC LIMIT $4`;

/** What vendors lost: beside the ledger, for whoever looks at the unit, its order or the vendor's. */
@Injectable()
export class LossQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list({ workOrderId, unitId, limit, after }: Input<typeof lossOperations.listVendorLosses>): Promise<Losses> {
    const { workOrder, serializedItem } = this.reads.models;
    const whole = { select: { id: true } } as const;
    if (workOrderId) found(await workOrder.findUnique({ where: { id: workOrderId }, ...whole }), 'This work order');
    if (unitId) found(await serializedItem.findUnique({ where: { id: unitId }, ...whole }), 'This unit');
    const start = after && /^[0-9a-f-]{36}$/i.test(after) ? after : null;
    const rows = await this.reads.sql<Row>(lossesSql, [workOrderId ?? null, unitId ?? null, start, limit + 1]);
    const shown = rows.slice(0, limit);
    return {
      rows: shown.map((row) => ({ ...row, at: row.at.toISOString() })),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}
