import type { StockFlow } from '@hubwright/rules/valuation';

/** A movement across the edge of the shop's own stock. */
export interface FlowRow {
  readonly part_id: string;
  readonly at: Date;
  readonly quantity: number;
  readonly from_kind: string;
  readonly to_kind: string;
  readonly unit_price: string;
}

const inStock = "('receiving', 'quarantine', 'bin')";
const atWork = new Set(['tray', 'unit', 'rack']);

const isFlow = `l.owner_id IS NULL AND l.origin <> 'taken-off'
    AND (m.from_kind IN ${inStock}) <> (m.to_kind IN ${inStock})
    AND 'other-lot' NOT IN (m.from_kind, m.to_kind)`;

/** Of lots that are the shop's and were bought or brought in, part by part in the order of the ledger. Lots split or merged stay what they were. */
export const flowsSql = `
  SELECT m.part_id, m.at, m.quantity, m.from_kind, m.to_kind, l.unit_price
  FROM movements m JOIN lots l ON l.id = m.lot_id
  WHERE ${isFlow}
  ORDER BY m.part_id, m.sequence`;

/** The same of one part ($1), with the lot of each. */
export const flowsOfPartSql = `
  SELECT m.id, m.part_id, m.at, m.quantity, m.from_kind, m.to_kind, l.unit_price, l.id AS lot_id, l.code AS lot_code
  FROM movements m JOIN lots l ON l.id = m.lot_id
  WHERE m.part_id = $1::uuid AND ${isFlow}
  ORDER BY m.sequence`;

/** What lies there now at what each lot cost, by part. */
export const lotCostSql = `
  SELECT l.part_id, l.unit_price, sum(b.on_hand)::int AS quantity
  FROM balances b JOIN lots l ON l.id = b.lot_id
  WHERE b.on_hand > 0 AND b.place_kind IN ${inStock} AND l.owner_id IS NULL AND l.origin <> 'taken-off'
  GROUP BY l.part_id, l.unit_price`;

/** What a movement is to the stock's value. */
export function flowOf(row: FlowRow): StockFlow {
  const { quantity, unit_price: unitPrice } = row;
  return { kind: kindOf(row), quantity, unitPrice };
}

function kindOf({ from_kind, to_kind }: FlowRow): StockFlow['kind'] {
  const comes = ['receiving', 'quarantine', 'bin'].includes(to_kind);
  const other = comes ? from_kind : to_kind;
  if (other === 'supplier') return comes ? 'receipt' : 'undone-receipt';
  if (other === 'count') return comes ? 'found' : 'lost';
  if (atWork.has(other)) return comes ? 'return' : 'issue';
  return comes ? 'other-in' : 'other-out';
}
