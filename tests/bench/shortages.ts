import { loadavg } from 'node:os';
import pg from 'pg';
import { answered, type Clerk, move } from './clerk.ts';
import { median, type Shot } from './load.ts';

const linesPerKit = 40;
const parts = 400;
const tries = 40;
const sizes = [60, 2_000] as const;

const partsSql = `
  INSERT INTO parts (id, number, maker, description, class, issue_unit, lead_time_days, unit_price, certificate_required)
  SELECT uuidv7(), 'BP-' || n, 'Vexley', 'bench part', 'mandatory', 'piece', 20, '3.00', false FROM generate_series(1, $1::int) n`;
/** Half of what the kits ask for lies on the shelf, in three lots a part. */
const lotsSql = `
  WITH made AS (INSERT INTO lots (id, code, part_id, state, origin, source_class, supplier_lot, certificate, unit_price, received_at)
    SELECT uuidv7(), 'BL-' || p.number || '-' || n, p.id, 'accepted', 'purchase', 'maker-new', 'B', 'C', '3.00', now()
    FROM parts p, generate_series(1, 3) n WHERE p.number LIKE 'BP-%' RETURNING id)
  INSERT INTO balances (lot_id, place_kind, place_ref, on_hand) SELECT id, 'bin', $1, 30 FROM made`;
/** Kits of forty lines on work orders of their own, needed over half a year. */
const kitsSql = `
  WITH model AS (SELECT w.*, u.maker, u.part_number FROM work_orders w JOIN serialized_items u ON u.id = w.unit_id WHERE w.closed_at IS NULL ORDER BY w.id LIMIT 1),
  units AS (INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
    SELECT uuidv7(), 'assembly', m.model_id, m.maker, m.part_number, 'BK' || n, now() FROM model m, generate_series($1::int, $2::int) n RETURNING id, serial),
  orders AS (INSERT INTO work_orders (id, number, customer_id, unit_id, model_id, revision_id, scope, stage, stage_since, consent, consent_since, received_on, reason)
    SELECT uuidv7(), 'WO-K' || substr(u.serial, 3), m.customer_id, u.id, m.model_id, m.revision_id, m.scope, 'in-work', now(), 'approved', now(), current_date, 'bench'
    FROM units u, model m RETURNING id, number, revision_id),
  made AS (INSERT INTO kits (id, work_order_id, code, revision_id, state, need_by, created_at)
    SELECT uuidv7(), id, 'KIT-B' || substr(number, 5), revision_id, 'open', current_date + (substr(number, 5)::int % 180), now() FROM orders RETURNING id, code)
  INSERT INTO kit_lines (id, kit_id, sequence, part_id, position, quantity, source)
  SELECT uuidv7(), k.id, n, p.id, 'place ' || n, 1 + n % 3, 'new'
  FROM made k, generate_series(1, ${linesPerKit}) n JOIN parts p ON p.number LIKE 'BP-%'
  WHERE p.number = 'BP-' || (1 + (substr(k.code, 6)::int * 7 + n * 10) % ${parts})`;
/** Told as something nobody knows, so that the server reads everything anew. */
const toldSql = `INSERT INTO outbox (nouns, subjects) VALUES ('{kits}', jsonb_build_array(jsonb_build_object('kind', 'bench', 'id', uuidv7())))`;

/**
 * How long after a movement the shortage view answers what is true then, with 60 and with 2,000 open kits of forty lines. Real time,
 * one request after the other: a clerk waits. The twin is the first answer, in which every line is worked out.
 */
export async function shortageRows(target: Clerk, databaseUrl: string): Promise<string[][]> {
  const sql = new pg.Client({ connectionString: databaseUrl });
  await sql.connect();
  try {
    await sql.query(partsSql, [parts]);
    await sql.query(lotsSql, [target.bins[0]]);
    const lots = (await sql.query<{ id: string }>("SELECT id FROM lots WHERE code LIKE 'BL-%' ORDER BY code")).rows;
    const rows: string[][] = [];
    let made = 0;
    for (const kits of sizes) {
      await sql.query(kitsSql, [made + 1, kits]);
      made = kits;
      await sql.query(toldSql);
      await sql.query('ANALYZE');
      rows.push(await rowFor(target, { kits, lots: lots.map(({ id }) => id) }));
    }
    return rows;
  } finally {
    await sql.end();
  }
}

async function rowFor(target: Clerk, { kits, lots }: { kits: number; lots: readonly string[] }): Promise<string[]> {
  const { cookie, port } = target;
  const view: Shot = { method: 'GET', path: '/api/shortages?limit=50', headers: { cookie } };
  const whole = await answered(port, view);
  const after: number[] = [];
  for (let n = 0; n < tries; n += 1) {
    await answered(port, move(target, lots[(n * 17) % lots.length] ?? ''));
    after.push(await answered(port, view));
  }
  const sorted = [...after].sort((a, b) => a - b);
  const p95 = sorted[Math.ceil(sorted.length * 0.95) - 1] ?? Number.NaN;
  return [
    `shortages after a movement, ${kits} kits (twin: all anew)`,
    `${median(after).toFixed(0)} ms, p95 ${p95.toFixed(0)} ms`,
    `${whole.toFixed(0)} ms`,
    (whole / median(after)).toFixed(1),
    `${sorted[0]?.toFixed(0)}–${sorted.at(-1)?.toFixed(0)}`,
    `${kits} kits × ${linesPerKit} lines over ${parts} parts, ${tries} movements; load of the machine ${loadavg()[0]?.toFixed(1)}`,
  ];
}
