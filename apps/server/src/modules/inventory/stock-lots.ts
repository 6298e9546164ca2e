import type { LotFacts } from '@hubwright/rules/stock';
import type { Tx } from '../../platform/database/client.ts';
import { type Sql, sql } from '../../platform/database/sql.ts';

/** A lot on the shelf as the rules see it, with where it lies. `part` in the facts is the part's id. */
export interface StockLot {
  readonly id: string;
  readonly code: string;
  readonly partId: string;
  readonly partNumber: string;
  readonly origin: string;
  readonly version: number;
  readonly facts: LotFacts;
  readonly ownerName: string | null;
  readonly onHand: number;
  readonly bins: readonly { readonly bin: string; readonly onHand: number }[];
}

interface Row {
  id: string;
  code: string;
  part_id: string;
  number: string;
  origin: string;
  version: number;
  state: LotFacts['state'];
  has_certificate: boolean;
  certificate_required: boolean;
  expires: string | null;
  minimum_days: number;
  source_class: string;
  owner_id: string | null;
  owner_name: string | null;
  on_hand: number;
  bins: { bin: string; onHand: number }[];
  reserved: number;
}

/** Lots of these parts that lie in bins, of any state, so that a refusal can name the reason. */
export async function stockOfParts(tx: Tx, partIds: readonly string[]): Promise<StockLot[]> {
  return stockLots(tx, sql`l.part_id = ANY(${[...partIds]}::uuid[]) AND l.origin <> 'taken-off' AND b.on_hand > 0`);
}

/** The lot on a scanned label, whatever it holds; undefined when the code is not a lot's. */
export async function lotByCode(tx: Tx, code: string): Promise<StockLot | undefined> {
  const [lot] = await stockLots(tx, sql`l.code = ${code}`);
  return lot;
}

async function stockLots(tx: Tx, which: Sql): Promise<StockLot[]> {
  const rows = await tx.$queryRaw<Row[]>`
    SELECT l.*, p.number, p.certificate_required, p.minimum_days_at_build AS minimum_days, l.certificate <> '' AS has_certificate,
      l.expires_on::text AS expires, o.name AS owner_name, b.on_hand, b.bins, r.reserved
    FROM lots l JOIN parts p ON p.id = l.part_id
    LEFT JOIN customers o ON o.id = l.owner_id
    CROSS JOIN LATERAL (
      SELECT coalesce(sum(on_hand), 0)::int AS on_hand,
        coalesce(json_agg(json_build_object('bin', place_ref, 'onHand', on_hand) ORDER BY place_ref), '[]') AS bins
      FROM balances WHERE lot_id = l.id AND place_kind = 'bin' AND on_hand > 0) b
    CROSS JOIN LATERAL (SELECT coalesce(sum(quantity), 0)::int AS reserved FROM reservations WHERE lot_id = l.id) r
    WHERE ${which} ORDER BY l.id`;
  return rows.map(toStockLot);
}

function toStockLot(row: Row): StockLot {
  return {
    id: row.id,
    code: row.code,
    partId: row.part_id,
    partNumber: row.number,
    origin: row.origin,
    version: row.version,
    ownerName: row.owner_name,
    onHand: row.on_hand,
    bins: row.bins,
    facts: {
      id: row.id,
      part: row.part_id,
      state: row.state,
      hasCertificate: row.has_certificate,
      certificateRequired: row.certificate_required,
      ...(row.expires ? { expires: row.expires } : {}),
      minimumDaysAtBuild: row.minimum_days,
      source: row.source_class,
      ...(row.owner_id ? { owner: row.owner_id } : {}),
      free: Math.max(0, row.on_hand - row.reserved),
    },
  };
}
