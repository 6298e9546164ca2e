import type { Input } from '@hubwright/contracts/operation';
import type { purchasingOperations } from '@hubwright/contracts/purchasing/operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';

const orderColumns = `
  o.id, o.number, o.state, o.ordered_on::text AS "orderedOn", o.version, o.note, o.revision, o.sent_revision AS "sentRevision",
  json_build_object('id', s.id, 'code', s.code, 'name', s.name) AS supplier,
  l.lines, l."openPieces", l."nextDue", coalesce(l."nextDue" < $1, false) AS late`;
const orderLines = `
  CROSS JOIN LATERAL (
    SELECT count(*)::int AS lines, CASE WHEN o.state = 'ordered' THEN coalesce(sum(greatest(quantity - received, 0)), 0)::int ELSE 0 END AS "openPieces",
      CASE WHEN o.state = 'ordered' THEN min(coalesce(confirmed_on, due_on)) FILTER (WHERE received < quantity)::text END AS "nextDue"
    FROM purchase_order_lines WHERE order_id = o.id) l`;

const listSql = `
  SELECT ${orderColumns} FROM purchase_orders o JOIN suppliers s ON s.id = o.supplier_id ${orderLines}
  WHERE ($2::text IS NULL OR o.number ILIKE $2 OR s.name ILIKE $2) AND ($3::text IS NULL OR o.state = $3)
    AND ($4::boolean IS NULL OR coalesce(l."nextDue" < $1, false) = $4) AND ($5::text IS NULL OR o.number < $5)
  ORDER BY o.number DESC LIMIT $6`;

const oneSql = `
  SELECT ${orderColumns} FROM purchase_orders o JOIN suppliers s ON s.id = o.supplier_id ${orderLines} WHERE o.id = $2`;

const lineColumns = `
  ol.id, ol.sequence, ol.quantity, ol.received, ol.due_on::text AS "dueOn", ol.confirmed_on::text AS "confirmedOn",
  ol.confirmed_quantity AS "confirmedQuantity", coalesce(ol.confirmed_on, ol.due_on)::text AS "expectedOn", ol.unit_price AS "unitPrice", ol.supplier_part_number AS "supplierPartNumber",
  json_build_object('id', p.id, 'number', p.number, 'description', p.description, 'issueUnit', p.issue_unit) AS part,
  CASE WHEN o.state = 'ordered' THEN greatest(ol.quantity - ol.received, 0) ELSE 0 END AS open,
  (o.state = 'ordered' AND ol.received < ol.quantity AND coalesce(ol.confirmed_on, ol.due_on) < $1::date) AS late`;

const linesSql = `
  SELECT ${lineColumns}, coalesce((SELECT json_agg(json_build_object('id', x.id, 'code', x.code, 'state', x.state) ORDER BY x.code)
    FROM lots x WHERE x.purchase_order_line_id = ol.id), '[]') AS lots
  FROM purchase_order_lines ol JOIN purchase_orders o ON o.id = ol.order_id JOIN parts p ON p.id = ol.part_id
  WHERE ol.order_id = $2 ORDER BY ol.sequence`;

const expectedSql = `
  SELECT ${lineColumns}, json_build_object('id', o.id, 'number', o.number) AS "order",
    json_build_object('id', s.id, 'code', s.code, 'name', s.name) AS supplier
  FROM purchase_order_lines ol JOIN purchase_orders o ON o.id = ol.order_id JOIN parts p ON p.id = ol.part_id
  JOIN suppliers s ON s.id = o.supplier_id
  WHERE o.state = 'ordered' AND ol.received < ol.quantity AND ($2::uuid IS NULL OR ol.part_id = $2)
    AND ($3::text IS NULL OR p.number ILIKE $3 OR o.number ILIKE $3 OR s.name ILIKE $3)
    AND ($4::text IS NULL OR (coalesce(ol.confirmed_on, ol.due_on)::text, ol.id::text) > ($4, $5::text))
  ORDER BY coalesce(ol.confirmed_on, ol.due_on), ol.id LIMIT $6`;

@Injectable()
export class PurchasingQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async listOrders(input: Input<typeof purchasingOperations.listOrders>) {
    const rows = await this.reads.sql<{ number: string }>(listSql, [
      await this.today(),
      input.search ? `%${input.search}%` : null,
      input.state ?? null,
      input.late === undefined ? null : input.late === 'true',
      input.after ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    return { rows: shown, next: rows.length > input.limit ? (shown.at(-1)?.number ?? null) : null };
  }

  async orderDetail({ orderId }: Input<typeof purchasingOperations.orderDetail>) {
    const today = await this.today();
    const [orders, items] = await Promise.all([
      this.reads.sql(oneSql, [today, orderId]),
      this.reads.sql(linesSql, [today, orderId]),
    ]);
    return { ...found(orders[0], 'This purchase order'), items };
  }

  async expectedDeliveries(input: Input<typeof purchasingOperations.expectedDeliveries>) {
    const [afterDay, afterId] = input.after?.split('~') ?? [];
    const rows = await this.reads.sql<{ id: string; expectedOn: string }>(expectedSql, [
      await this.today(),
      input.partId ?? null,
      input.search ? `%${input.search}%` : null,
      afterDay ?? null,
      afterId ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    const last = shown.at(-1);
    return { rows: shown, next: rows.length > input.limit && last ? `${last.expectedOn}~${last.id}` : null };
  }

  private today(): Promise<string> {
    return this.zone.today(this.clock.now());
  }
}
