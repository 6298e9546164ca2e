import type { inventoryOperations } from '@hubwright/contracts/inventory/operations';
import type { Input } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { Reads } from '../../platform/database/reads.ts';
import { placeTitle } from './place-title.ts';

interface MovementRow {
  id: string;
  sequence: string;
  at: Date;
  lot_id: string;
  lot_code: string;
  part_id: string;
  part_number: string;
  quantity: number;
  from_kind: string;
  from_ref: string;
  from_title: string;
  to_kind: string;
  to_ref: string;
  to_title: string;
  position: string | null;
  reason: string;
  reverses_id: string | null;
  reversed_by: string | null;
  person_id: string;
  person: string;
}

/** Each filter is a constant of its own: one text that holds all of them could use none of their indexes. */
const filters = {
  lotId: 'm.lot_id = $::uuid',
  partId: 'm.part_id = $::uuid',
  kitId: 'm.kit_line_id IN (SELECT id FROM kit_lines WHERE kit_id = $::uuid)',
  orderLineId: 'm.lot_id IN (SELECT id FROM lots WHERE purchase_order_line_id = $::uuid)',
  bin: "m.id IN (SELECT id FROM movements WHERE from_kind = 'bin' AND from_ref = $ UNION ALL SELECT id FROM movements WHERE to_kind = 'bin' AND to_ref = $)",
  after: 'm.sequence < $::bigint',
  flow: `CASE $ WHEN 'receipts' THEN 'supplier' IN (m.from_kind, m.to_kind) WHEN 'counts' THEN 'count' IN (m.from_kind, m.to_kind)
    WHEN 'scrap' THEN 'scrap' IN (m.from_kind, m.to_kind)
    ELSE (m.from_kind IN ('tray', 'unit', 'rack')) <> (m.to_kind IN ('tray', 'unit', 'rack')) AND
      (m.from_kind IN ('receiving', 'quarantine', 'bin')) <> (m.to_kind IN ('receiving', 'quarantine', 'bin')) END`,
  since: 'm.at >= $::date::timestamp AT TIME ZONE (SELECT zone FROM shop_profile)',
  before: 'm.at < $::date::timestamp AT TIME ZONE (SELECT zone FROM shop_profile)',
} as const;

/** The page is cut first: titles and names are looked up for its rows only. */
function movementsSql(given: readonly (keyof typeof filters)[]): string {
  const where = given.map((name, index) => filters[name].replaceAll('$', `$${index + 2}`));
  return `
    SELECT m.*, l.code AS lot_code, p.number AS part_number, coalesce(w.display_name, '') AS person,
      ${placeTitle({ kind: 'm.from_kind', ref: 'm.from_ref' })} AS from_title,
      ${placeTitle({ kind: 'm.to_kind', ref: 'm.to_ref' })} AS to_title,
      (SELECT r.id FROM movements r WHERE r.reverses_id = m.id) AS reversed_by
    FROM (SELECT * FROM movements m WHERE ${['true', ...where].join(' AND ')} ORDER BY m.sequence DESC LIMIT $1) m
    JOIN lots l ON l.id = m.lot_id JOIN parts p ON p.id = m.part_id LEFT JOIN people w ON w.id = m.person_id
    ORDER BY m.sequence DESC`;
}

/** The stock ledger, newest first: every number on a screen leads here. */
@Injectable()
export class MovementsQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async listMovements(input: Input<typeof inventoryOperations.listMovements>) {
    const { limit, after, ...rest } = input;
    const asked = { ...rest, after: after && /^\d{1,18}$/.test(after) ? after : undefined };
    const given = (Object.keys(filters) as (keyof typeof filters)[]).filter((name) => asked[name] !== undefined);
    const rows = await this.reads.sql<MovementRow>(movementsSql(given), [
      limit + 1,
      ...given.map((name) => asked[name]),
    ]);
    const shown = rows.slice(0, limit);
    return { rows: shown.map(movementRow), next: rows.length > limit ? (shown.at(-1)?.sequence ?? null) : null };
  }
}

function movementRow(row: MovementRow) {
  return {
    id: row.id,
    sequence: Number(row.sequence),
    at: row.at.toISOString(),
    lotId: row.lot_id,
    lotCode: row.lot_code,
    part: { id: row.part_id, number: row.part_number },
    quantity: row.quantity,
    from: { kind: row.from_kind, ref: row.from_ref, title: row.from_title },
    to: { kind: row.to_kind, ref: row.to_ref, title: row.to_title },
    position: row.position,
    reason: row.reason,
    reversesId: row.reverses_id,
    reversedById: row.reversed_by,
    person: { id: row.person_id, displayName: row.person },
  };
}
