import type pg from 'pg';

/**
 * Balances on the aircraft that ended, by number ($1, or all). An order of its own, so it goes by itself: time runs from its own approval
 * for return to service, or from the last entry about it when it was abandoned.
 */
export const closedBalancesSql = `
  SELECT 'balance on the aircraft', b.id, b.number, (coalesce(
      (SELECT max(s.signed_at) FROM field_signatures s WHERE s.field_balance_id = b.id AND s.kind = 'released'),
      (SELECT max(e.at) FROM record_links l JOIN record_entries e ON e.id = l.entry_id
        WHERE l.subject_kind = 'field-balance' AND l.subject_id = b.id)
    ) AT TIME ZONE (SELECT zone FROM shop_profile))::date::text
  FROM field_balances b
  WHERE b.state IN ('released', 'abandoned') AND ($1::text IS NULL OR b.number = $1)
    AND EXISTS (SELECT 1 FROM record_links l WHERE l.subject_kind = 'field-balance' AND l.subject_id = b.id)`;

export const balanceChains = (id: string) => [{ kind: 'field-balance', id }];

/** A run names the sheet it was read under, so runs go before signatures. Movements of the weights stay in the chains of their lots. */
export async function balanceRows(client: pg.Client, id: string): Promise<{ table: string; ids: string[] }[]> {
  const rows: { table: string; ids: string[] }[] = [];
  for (const table of ['field_reviews', 'field_weights', 'field_runs', 'field_signatures']) {
    const found = await client.query<{ id: string }>(`SELECT id FROM ${table} WHERE field_balance_id = $1`, [id]);
    rows.push({ table, ids: found.rows.map((row) => row.id) });
  }
  return rows;
}
