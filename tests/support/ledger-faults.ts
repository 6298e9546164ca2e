import pg from 'pg';

// Each query answers what must not be.
const checks: Readonly<Record<string, string>> = {
  'a balance is not the sum of its movements': `
    WITH moved AS (
      SELECT lot_id, to_kind AS kind, to_ref AS ref, quantity FROM movements
      UNION ALL SELECT lot_id, from_kind, from_ref, -quantity FROM movements),
    sums AS (SELECT lot_id, kind, ref, sum(quantity) AS total FROM moved
      WHERE kind NOT IN ('supplier', 'count', 'customer', 'other-lot') GROUP BY lot_id, kind, ref)
    SELECT coalesce(s.lot_id, b.lot_id)::text || ' ' || coalesce(s.kind, b.place_kind) AS what
    FROM sums s FULL JOIN balances b ON b.lot_id = s.lot_id AND b.place_kind = s.kind AND b.place_ref = s.ref
    WHERE coalesce(s.total, 0) <> coalesce(b.on_hand, 0)`,
  'what came in is not what is held and what went out': `
    SELECT l.code AS what FROM lots l
    WHERE (SELECT coalesce(sum(CASE WHEN from_kind IN ('supplier', 'count', 'customer', 'other-lot') THEN quantity ELSE 0 END)
             - sum(CASE WHEN to_kind IN ('supplier', 'count', 'customer', 'other-lot') THEN quantity ELSE 0 END), 0) FROM movements WHERE lot_id = l.id)
        <> (SELECT coalesce(sum(on_hand), 0) FROM balances WHERE lot_id = l.id)`,
  'of a part, received is not on hand, installed, scrapped, returned, at the vendor and lost there': `
    WITH way AS (
      SELECT part_id, to_kind AS kind, quantity FROM movements UNION ALL SELECT part_id, from_kind, -quantity FROM movements),
    sums AS (SELECT part_id,
        -coalesce(sum(quantity) FILTER (WHERE kind IN ('supplier', 'customer', 'count')), 0) AS came,
        coalesce(sum(quantity) FILTER (WHERE kind = 'other-lot'), 0) AS relabelled
      FROM way GROUP BY part_id),
    held AS (SELECT l.part_id,
        sum(b.on_hand) FILTER (WHERE b.place_kind IN ('receiving', 'quarantine', 'bin', 'tray', 'rack', 'held')) AS on_hand,
        sum(b.on_hand) FILTER (WHERE b.place_kind = 'unit') AS installed,
        sum(b.on_hand) FILTER (WHERE b.place_kind = 'scrap') AS scrapped,
        sum(b.on_hand) FILTER (WHERE b.place_kind = 'vendor') AS at_vendor,
        sum(b.on_hand) FILTER (WHERE b.place_kind = 'lost') AS lost
      FROM balances b JOIN lots l ON l.id = b.lot_id GROUP BY l.part_id)
    SELECT p.number AS what FROM sums s JOIN parts p ON p.id = s.part_id LEFT JOIN held h ON h.part_id = s.part_id
    WHERE s.relabelled <> 0
      OR s.came <> coalesce(h.on_hand, 0) + coalesce(h.installed, 0) + coalesce(h.scrapped, 0) + coalesce(h.at_vendor, 0)
        + coalesce(h.lost, 0)`,
  'a serialized piece is in two places or counted twice': `
    SELECT l.code AS what FROM lots l JOIN parts p ON p.id = l.part_id JOIN balances b ON b.lot_id = l.id
    WHERE p.serialised AND b.on_hand > 0 GROUP BY l.code HAVING sum(b.on_hand) > 1`,
  'returned is not what the returns say': `
    SELECT r.lot_id::text AS what FROM supplier_returns r JOIN movements m ON m.id = r.movement_id
    WHERE m.to_kind <> 'supplier' OR m.quantity <> r.quantity OR m.lot_id <> r.lot_id`,
  'less than nothing': 'SELECT lot_id::text AS what FROM balances WHERE on_hand < 0',
  'more promised than lies in bins': `
    SELECT l.code AS what FROM lots l
    WHERE (SELECT coalesce(sum(quantity), 0) FROM reservations WHERE lot_id = l.id)
        > (SELECT coalesce(sum(on_hand), 0) FROM balances WHERE lot_id = l.id AND place_kind = 'bin')`,
  'more in tray and unit than a line takes': `
    SELECT kl.id::text AS what FROM kit_lines kl
    WHERE (SELECT coalesce(sum(CASE WHEN to_kind = 'unit' THEN quantity WHEN from_kind = 'unit' THEN -quantity ELSE 0 END), 0)
      FROM movements WHERE kit_line_id = kl.id) > kl.quantity`,
  'a line has less than nothing somewhere': `
    SELECT m.kit_line_id::text || ' ' || m.kind AS what FROM (
      SELECT kit_line_id, to_kind AS kind, quantity FROM movements
      UNION ALL SELECT kit_line_id, from_kind, -quantity FROM movements) m
    WHERE kit_line_id IS NOT NULL AND kind IN ('tray', 'rack', 'unit') GROUP BY m.kit_line_id, m.kind HAVING sum(quantity) < 0`,
  'a movement undone twice': `
    SELECT reverses_id::text AS what FROM movements WHERE reverses_id IS NOT NULL GROUP BY reverses_id HAVING count(*) > 1`,
};

/** Everything about the stock ledger that must not be, by name; empty when it holds. Reads as the owner of the tables. */
export async function ledgerFaults(databaseUrl: string): Promise<string[]> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const faults: string[] = [];
    for (const [name, sql] of Object.entries(checks)) {
      const { rows } = await client.query<{ what: string }>(sql);
      faults.push(...rows.map(({ what }) => `${name}: ${what}`));
    }
    return faults;
  } finally {
    await client.end();
  }
}
