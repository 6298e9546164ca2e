import type { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import type { Input } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';

interface LotRow {
  id: string;
  code: string;
  part_id: string;
  number: string;
  description: string;
  issue_unit: string;
  state: string;
  source_class: string;
  supplier_lot: string;
  certificate: string;
  expires_on: string | null;
  version: number;
  on_hand: number;
  reserved: number;
  place: string | null;
}

// On hand counts quarantine and bins; trays, racks and units are no longer stock.
const listSql = `
  SELECT l.id, l.code, l.part_id, p.number, p.description, p.issue_unit, l.state, l.source_class, l.supplier_lot, l.certificate,
    l.expires_on::text, l.version,
    coalesce((SELECT sum(b.on_hand) FROM balances b WHERE b.lot_id = l.id AND b.place_kind IN ('quarantine', 'bin')), 0)::int AS on_hand,
    coalesce((SELECT sum(r.quantity) FROM reservations r WHERE r.lot_id = l.id), 0)::int AS reserved,
    (SELECT string_agg(trim(b.place_kind || ' ' || b.place_ref), ', ' ORDER BY b.place_ref) FROM balances b
      WHERE b.lot_id = l.id AND b.on_hand > 0 AND b.place_kind IN ('quarantine', 'bin')) AS place
  FROM lots l JOIN parts p ON p.id = l.part_id
  WHERE l.origin <> 'taken-off'
    AND ($1::text IS NULL OR l.code ILIKE $1 OR p.number ILIKE $1 OR l.supplier_lot ILIKE $1)
    AND ($2::text IS NULL OR l.state = $2) AND ($3::uuid IS NULL OR l.part_id = $3) AND ($4::text IS NULL OR l.code < $4)
  ORDER BY l.code DESC LIMIT $5`;

@Injectable()
export class InventoryQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async listLots(input: Input<typeof inventoryOperations.listLots>) {
    const rows = await this.reads.sql<LotRow>(listSql, [
      input.search ? `%${input.search}%` : null,
      input.state ?? null,
      input.partId ?? null,
      input.after ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    return {
      rows: shown.map((row) => ({
        id: row.id,
        code: row.code,
        state: row.state,
        version: row.version,
        onHand: row.on_hand,
        reserved: row.reserved,
        part: { id: row.part_id, number: row.number, description: row.description, issueUnit: row.issue_unit },
        sourceClass: row.source_class,
        supplierLot: row.supplier_lot,
        certificate: row.certificate,
        expiresOn: row.expires_on,
        place: row.place ?? '',
      })),
      next: rows.length > input.limit ? (shown.at(-1)?.code ?? null) : null,
    };
  }
}
