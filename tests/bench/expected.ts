import { readFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import pg from 'pg';
import { answered, type Clerk, move } from './clerk.ts';
import { median, type Shot } from './load.ts';

const [units, parts, models, linesPerModel] = [3_000, 5_000, 50, 100];
const tries = 20;

const partsSql = `
  INSERT INTO parts (id, number, maker, description, class, issue_unit, lead_time_days, unit_price, certificate_required)
  SELECT uuidv7(), 'BE-' || n, 'Vexley', 'bench part', CASE n % 3 WHEN 0 THEN 'seal' ELSE 'mandatory' END, 'piece', 20, '3.00', false FROM generate_series(1, ${parts}) n`;
/** Fifty models of a hundred lines each, two in three always new, under manuals of their own; parts are shared by neighbours. */
const modelsSql = `
  WITH made_manuals AS (INSERT INTO manuals (id, number, title, kind, maker) SELECT uuidv7(), 'BM-' || n, 'bench', 'overhaul', 'Vexley' FROM generate_series(1, ${models}) n RETURNING id, number),
  revisions AS (INSERT INTO manual_revisions (id, manual_id, revision, issued_on, state) SELECT uuidv7(), id, '1', current_date, 'current' FROM made_manuals RETURNING id, manual_id),
  made AS (INSERT INTO unit_models (id, kind, maker, designation, blade_count, material, pitch, manual_id)
    SELECT uuidv7(), 'propeller', 'Vexley', number, 3, 'aluminium', 'constant-speed', id FROM made_manuals RETURNING id, designation, manual_id)
  INSERT INTO kit_list_lines (id, revision_id, model_id, sequence, part_id, position, scopes, per, quantity, source)
  SELECT uuidv7(), r.id, m.id, n, p.id, 'place ' || n, '{overhaul}', CASE n % 4 WHEN 0 THEN 'blade' ELSE 'unit' END, 1 + n % 3, CASE n % 3 WHEN 0 THEN 'reused' ELSE 'new' END
  FROM made m JOIN revisions r ON r.manual_id = m.manual_id, generate_series(1, ${linesPerModel}) n
  JOIN parts p ON p.number LIKE 'BE-%' WHERE p.number = 'BE-' || (1 + (substr(m.designation, 4)::int * 97 + n * 53) % ${parts})`;
/** Units that come due over the next months, each spread over two. */
const dueSql = `
  WITH made AS (INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
    SELECT uuidv7(), 'assembly', m.id, m.maker, m.designation, 'BD' || n, now() FROM generate_series(1, ${units}) n
    JOIN unit_models m ON m.designation = 'BM-' || (1 + n % ${models}) RETURNING id, model_id, serial)
  INSERT INTO unit_due (unit_id, customer_id, model_id, due_on, earliest, latest, governed_by, governed_what, basis, past_hours, in_shop, computed_on, computed_at)
  SELECT id, (SELECT id FROM customers ORDER BY id LIMIT 1), model_id, current_date + substr(serial, 3)::int % 170, current_date + substr(serial, 3)::int % 170 - 25,
    current_date + substr(serial, 3)::int % 170 + 25, 'calendar', 'bench', 'bench', false, false, current_date, now() FROM made`;
const movedSql = `UPDATE unit_due SET due_on = due_on + 1, latest = latest + 1, computed_at = clock_timestamp() WHERE unit_id = (SELECT id FROM serialized_items WHERE serial = $1)`;

interface Target extends Clerk {
  readonly pid: number;
}

/**
 * The list to buy from and the shortages with what is expected of 3,000 units that come due, beside the 2,000 open kits that `shortageRows` left: after
 * a movement of stock, and after a unit's due date moved. The twin is the first answer, in which everything is worked out.
 */
export async function expectedRows(target: Target, databaseUrl: string): Promise<string[][]> {
  const sql = new pg.Client({ connectionString: databaseUrl });
  await sql.connect();
  try {
    for (const statement of [partsSql, modelsSql, dueSql, 'ANALYZE']) await sql.query(statement);
    const lots = (await sql.query<{ id: string }>("SELECT id FROM lots WHERE code LIKE 'BL-%' ORDER BY code")).rows;
    const shortages = view(target, '/api/shortages?limit=50&of=all');
    const buying = view(target, '/api/purchasing/suggestions?limit=50');
    const whole = await answered(target.port, shortages);
    const list = await answered(target.port, buying);
    const stock = async (n: number) =>
      void (await answered(target.port, move(target, lots[(n * 17) % lots.length]?.id ?? '')));
    const due = async (n: number) => void (await sql.query(movedSql, [`BD${1 + ((n * 37) % units)}`]));
    return [
      await row(target, {
        what: 'shortages and expected, after a movement',
        shot: shortages,
        change: stock,
        twin: whole,
      }),
      await row(target, {
        what: 'shortages and expected, after a due date moved',
        shot: shortages,
        change: due,
        twin: whole,
      }),
      await row(target, { what: 'what to buy, after a movement', shot: buying, change: stock, twin: list }),
    ];
  } finally {
    await sql.end();
  }
}

interface Measured {
  readonly what: string;
  readonly shot: Shot;
  readonly change: (n: number) => Promise<void>;
  readonly twin: number;
}

async function row({ port, pid }: Target, { what, shot, change, twin }: Measured): Promise<string[]> {
  const after: number[] = [];
  for (let n = 0; n < tries; n += 1) {
    await change(n);
    after.push(await answered(port, shot));
  }
  const sorted = [...after].sort((a, b) => a - b);
  const p95 = sorted[Math.ceil(sorted.length * 0.95) - 1] ?? Number.NaN;
  return [
    `${what} (twin: the first answer)`,
    `${median(after).toFixed(0)} ms, p95 ${p95.toFixed(0)} ms`,
    `${twin.toFixed(0)} ms`,
    (twin / median(after)).toFixed(1),
    `${sorted[0]?.toFixed(0)}–${sorted.at(-1)?.toFixed(0)}`,
    `2,000 kits, ${parts} parts, ${units} units due, ${tries} changes; server ${residentMegabytes(pid)} MB resident with its workers; load ${loadavg()[0]?.toFixed(1)}`,
  ];
}

function residentMegabytes(pid: number): string {
  const kilobytes = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? '0';
  return (Number(kilobytes) / 1024).toFixed(0);
}

function view({ cookie }: Target, path: string): Shot {
  return { method: 'GET', path, headers: { cookie } };
}
