import type { Ask } from './ask.ts';
import { type KitRow, openKitsSql } from './kits.sql.ts';

/** Money is only added up in the shop's own currency. */
const amountsSql = `
  SELECT q.work_order_id AS "workOrderId",
    (coalesce((array_agg(q.total_minor ORDER BY q.created_at DESC) FILTER (WHERE q.kind = 'firm'))[1],
      (array_agg(q.total_minor ORDER BY q.created_at DESC) FILTER (WHERE q.kind = 'estimate'))[1], 0)
      + coalesce(sum(q.total_minor) FILTER (WHERE q.kind = 'over-and-above' AND q.state = 'approved'), 0))::int AS minor
  FROM quotes q JOIN kits k ON k.work_order_id = q.work_order_id AND k.state = 'open'
  WHERE q.state IN ('sent', 'silent', 'approved') AND q.currency = $1 GROUP BY q.work_order_id`;
const binsSql = `
  SELECT lot_id AS "lotId", string_agg(place_ref, ', ' ORDER BY place_ref) AS bin FROM balances
  WHERE place_kind = 'bin' AND on_hand > 0 AND lot_id = ANY($1::uuid[]) GROUP BY lot_id`;

export interface FillFacts {
  readonly currency: string;
  readonly kits: readonly KitRow[];
  /** In the currency's smallest unit, by work order; absent where no price is with the customer. */
  readonly amounts: ReadonlyMap<string, number>;
}

export async function fillFacts(ask: Ask): Promise<FillFacts> {
  const [shop] = await ask<{ currency: string }>('SELECT currency FROM shop_profile', []);
  const currency = shop?.currency ?? 'USD';
  const kits = await ask<KitRow>(openKitsSql, []);
  const amounts = await ask<{ workOrderId: string; minor: number }>(amountsSql, [currency]);
  return { currency, kits, amounts: new Map(amounts.map(({ workOrderId, minor }) => [workOrderId, minor])) };
}

/** In which bins these lots lie. */
export async function binsOf(ask: Ask, lotIds: readonly string[]): Promise<Map<string, string>> {
  const rows = await ask<{ lotId: string; bin: string }>(binsSql, [[...lotIds]]);
  return new Map(rows.map(({ lotId, bin }) => [lotId, bin]));
}
