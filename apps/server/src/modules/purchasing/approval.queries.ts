import type { Input, Reply } from '@hubwright/contracts/operation';
import type { approvalOperations } from '@hubwright/contracts/purchasing/approval-operations';
import { deliveryRecord, enoughDeliveries } from '@hubwright/rules/replenishment';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { standingWords } from './approved.ts';
import { type DeliveryRow, deliveriesSql, newestDeliveries } from './delivery-rows.ts';

type Detail = Reply<typeof approvalOperations.supplierDetail>;

const supplierSql = `
  SELECT s.id, s.code, s.name, s.email, s.phone, s.approved_until::text AS "approvedUntil", s.least_order AS "leastOrder", s.version,
    EXISTS (SELECT 1 FROM supplier_exceptions e WHERE e.supplier_id = s.id AND e.order_id IS NULL AND e.good_until >= $2::date) AS allowed,
    coalesce((SELECT json_agg(x ORDER BY x.at DESC) FROM (
      SELECT a.id, a.approved_until::text AS "approvedUntil", a.basis, to_char(a.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS at,
        json_build_object('id', p.id, 'displayName', p.display_name) AS person
      FROM supplier_approvals a JOIN people p ON p.id = a.person_id WHERE a.supplier_id = s.id ORDER BY a.at DESC LIMIT 50) x), '[]') AS approvals,
    coalesce((SELECT json_agg(x ORDER BY x.at DESC) FROM (
      SELECT e.id, e.reason, e.good_until::text AS "goodUntil", to_char(e.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS at,
        CASE WHEN o.id IS NOT NULL THEN json_build_object('id', o.id, 'number', o.number) END AS "order",
        json_build_object('id', p.id, 'displayName', p.display_name) AS person
      FROM supplier_exceptions e JOIN people p ON p.id = e.person_id LEFT JOIN purchase_orders o ON o.id = e.order_id
      WHERE e.supplier_id = s.id ORDER BY e.at DESC LIMIT 50) x), '[]') AS exceptions
  FROM suppliers s WHERE s.id = $1::uuid`;

type SupplierRow = Omit<Detail, 'standing' | 'mayOrder' | 'record' | 'deliveries'> & { allowed: boolean };

@Injectable()
export class ApprovalQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async supplierDetail({ supplierId }: Input<typeof approvalOperations.supplierDetail>): Promise<Detail> {
    const today = await this.zone.today(this.clock.now());
    const [rows, made] = await Promise.all([
      this.reads.sql<SupplierRow>(supplierSql, [supplierId, today]),
      this.reads.sql<DeliveryRow>(deliveriesSql, [await this.zone.zone(), [supplierId], newestDeliveries, null]),
    ]);
    const { allowed, ...supplier } = found(rows[0], 'This supplier');
    const { approvedUntil: until, name } = supplier;
    const isApproved = until !== null && until >= today;
    const standing = standingWords(name, until, today);
    return {
      ...supplier,
      standing: !isApproved && allowed ? `${standing} An exception allows it today.` : standing,
      mayOrder: isApproved || allowed,
      record: recordOf(made),
    };
  }

  async supplierDeliveries({ supplierId, after, limit }: Input<typeof approvalOperations.supplierDeliveries>) {
    found(await this.reads.models.supplier.findUnique({ where: { id: supplierId } }), 'This supplier');
    const from = Number(after ?? 0) || 0;
    const to = from + limit;
    const made = await this.reads.sql<DeliveryRow>(deliveriesSql, [await this.zone.zone(), [supplierId], to + 1, from]);
    const rows = made.slice(0, limit).map(({ supplierId: _, ...row }) => row);
    return { rows, next: made.length > limit ? String(to) : null };
  }
}

function recordOf(made: readonly DeliveryRow[]): Detail['record'] {
  const record = deliveryRecord(made);
  if (!record) return null;
  const { count, median, fourInFive, nineteenInTwenty, onTime } = record;
  return {
    ...{ count, median, fourInFive, nineteenInTwenty },
    ...{ onTime: onTime.count, onTimeLow: onTime.low, onTimeHigh: onTime.high, isEnough: count >= enoughDeliveries },
  };
}
