import { readFileSync } from 'node:fs';
import pg from 'pg';
import { comingSql } from '../../apps/server/src/modules/due-dates/coming-due.queries.ts';
import { cpuMilliseconds, median, send } from './load.ts';
import { startServer } from './server.ts';
import { type BenchShop, openShop } from './shop.ts';

/** Each size grows out of the one before; `DUE_UNITS=100000,200000` for the stress size. */
const sizes = (process.env.DUE_UNITS ?? '3000,6000').split(',').map(Number);
const aircraftOfCustomer = 500;
const requests = 400;

/**
 * Two units on each aircraft, ten years of monthly readings, 500 aircraft a customer, written directly. Every figure lies on its
 * aircraft's line, so that nothing contradicts anything. $1 aircraft before, $2 aircraft after; hours in tenths since ten years ago.
 */
const growth = [
  `INSERT INTO customers (id, code, name, accepted_sources) SELECT uuidv7(), 'DUE-' || n, 'Fleet ' || n, '{}'
   FROM generate_series($1::int / ${aircraftOfCustomer}, $2::int / ${aircraftOfCustomer}) n ON CONFLICT DO NOTHING`,
  `INSERT INTO aircraft (id, customer_id, registration, airframe, engine)
   SELECT uuidv7(), c.id, 'DUE-' || n, 'bench', 'bench' FROM generate_series($1::int, $2::int - 1) n
   JOIN customers c ON c.code = 'DUE-' || n / ${aircraftOfCustomer}`,
  `INSERT INTO aircraft_readings (id, aircraft_id, read_on, meter, hours_tenths, recorded_at)
   SELECT uuidv7(), a.id, current_date - 30 * back, 'tachometer', (5 + n % 20) * (3650 - 30 * back), now()
   FROM generate_series($1::int, $2::int - 1) n JOIN aircraft a ON a.registration = 'DUE-' || n, generate_series(0, 119) back`,
  `WITH kind AS (SELECT m.id AS model_id, m.designation, r.id AS revision_id FROM tbo_rules t JOIN manual_revisions r ON r.id = t.revision_id
       JOIN unit_models m ON m.id = t.model_id WHERE r.state = 'current' AND t.hours_tenths IS NOT NULL ORDER BY m.designation LIMIT 1),
     units AS (INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
       SELECT uuidv7(), 'assembly', kind.model_id, 'bench', kind.designation, 'DUE' || n || side, now()
       FROM kind, generate_series($1::int, $2::int - 1) n, unnest('{L,R}'::text[]) side RETURNING id, serial),
     placed AS (SELECT u.id, a.id AS aircraft_id, a.customer_id, (CASE right(u.serial, 1) WHEN 'L' THEN 'left' ELSE 'right' END) AS position,
         x.n, current_date - (100 + x.n % 2400) AS on_day
       FROM units u CROSS JOIN LATERAL (SELECT substr(u.serial, 4, length(u.serial) - 4)::int AS n) x JOIN aircraft a ON a.registration = 'DUE-' || x.n),
     orders AS (INSERT INTO work_orders (id, number, customer_id, aircraft_id, unit_id, model_id, revision_id, scope, stage, stage_since, consent,
         consent_since, received_on, reason, shipped_at, closed_at)
       SELECT uuidv7(), 'WO-D' || p.n || p.position, p.customer_id, p.aircraft_id, p.id, kind.model_id, kind.revision_id, 'overhaul', 'closed',
         now(), 'estimate-due', now(), p.on_day - 30, 'bench', p.on_day, p.on_day FROM placed p, kind),
     papers AS (INSERT INTO time_records (id, item_id, recorded_on, since_overhaul_tenths, meter, meter_tenths, basis, recorded_at)
       SELECT uuidv7(), p.id, p.on_day, 0, 'tachometer', (5 + p.n % 20) * (p.on_day - current_date + 3650), 'overhaul', p.on_day FROM placed p)
   INSERT INTO aircraft_intervals (id, interval_id, item_id, aircraft_id, position, meter, from_date, from_tenths, basis, recorded_by, recorded_at)
   SELECT p.id, p.id, p.id, p.aircraft_id, p.position, 'tachometer', p.on_day, (5 + p.n % 20) * (p.on_day - current_date + 3650), 'bench',
     (SELECT id FROM people LIMIT 1), now() FROM placed p`,
];

/** The due list against a point read, and working every date out again at each size. */
export async function dueRows(): Promise<string[][]> {
  const shop = await openShop();
  const sql = new pg.Client({ connectionString: shop.environment.DATABASE_URL });
  await sql.connect();
  try {
    await shop.closeInProcess();
    const runs: Run[] = [];
    const lists: string[][] = [];
    let before = 0;
    for (const units of sizes) {
      await grow(sql, before / 2, units / 2);
      before = units;
      const working = await startServer(shop);
      const run = await wholeRun(sql, working.pid, units);
      working.stop();
      // Another that finds everything worked out: what a server takes by itself.
      const server = await startServer(shop);
      runs.push({ ...run, idle: peakMegabytes(server.pid) });
      lists.push(...(await listRows(shop, server.port, { sql, units })));
      server.stop();
    }
    return [...lists, ...runs.map((run, i) => runRow(run, runs[i - 1]))];
  } finally {
    await sql.end();
    await shop.close();
  }
}

async function grow(sql: pg.Client, from: number, to: number): Promise<void> {
  const step = 5_000;
  for (let at = from; at < to; at += step)
    for (const statement of growth) await sql.query(statement, [at, Math.min(to, at + step)]);
  await sql.query('VACUUM ANALYZE');
  // A server that starts without it works everything out.
  await sql.query('DELETE FROM due_state');
}

interface Run {
  readonly units: number;
  readonly seconds: number;
  readonly cpu: number;
  /** Resident at most, in megabytes: the process that works dates out, the server beside it, and a server with nothing to work out. */
  readonly worker: number;
  readonly server: number;
  readonly idle: number;
  /** What the database's processes hold of their own, shared buffers apart, all of them together. */
  readonly database: number;
}

function peakMegabytes(pid: number): number {
  return megabytes(pid, 'VmHWM');
}

/** 0 where the process has ended. */
function megabytes(pid: number, what: 'VmHWM' | 'RssAnon'): number {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    return Number(new RegExp(`${what}:\\s+(\\d+)`).exec(status)?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}

/** The same of processor time. */
function cpuOf(pid: number): number {
  try {
    return cpuMilliseconds(pid);
  } catch {
    return 0;
  }
}

/** What a server began; the process that works due dates out is the only one that lasts. */
function childrenOf(pid: number): number[] {
  return readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').split(' ').filter(Boolean).map(Number);
}

async function wholeRun(sql: pg.Client, pid: number, units: number): Promise<Omit<Run, 'idle'>> {
  const began = performance.now();
  const postmaster = await postmasterOf(sql);
  const databaseBefore = databaseCpu(postmaster);
  let [worker, database, workerCpu] = [0, 0, 0];
  for (;;) {
    for (const child of childrenOf(pid)) {
      worker = Math.max(worker, peakMegabytes(child));
      workerCpu = Math.max(workerCpu, cpuOf(child));
    }
    database = Math.max(database, sum(childrenOf(postmaster).map((one) => megabytes(one, 'RssAnon'))));
    const { rows } = await sql.query('SELECT whole_on FROM due_state');
    if (rows[0]?.whole_on) break;
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
  const seconds = (performance.now() - began) / 1000;
  const cpu = cpuMilliseconds(pid) + workerCpu + databaseCpu(postmaster) - databaseBefore;
  const run = { units, seconds, cpu, worker, database, server: peakMegabytes(pid) };
  console.log(`${units} units: ${seconds.toFixed(1)} s, ${(cpu / 1000).toFixed(1)} s CPU; ${sizesOf(run)}`);
  return run;
}

function sizesOf({ worker, server, database }: Pick<Run, 'worker' | 'server' | 'database'>): string {
  const own = worker === 0 ? 'in the server itself' : `its process ${worker.toFixed(0)} MB`;
  return `${own}, server ${server.toFixed(0)} MB, database ${database.toFixed(0)} MB beside shared buffers`;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/** Processor time of the shop's database: its processes that live. */
function databaseCpu(postmaster: number): number {
  return sum([postmaster, ...childrenOf(postmaster)].map(cpuOf));
}

/** The database was started beside the bench: the process of a connection is a child of its first. */
async function postmasterOf(sql: pg.Client): Promise<number> {
  const { rows } = await sql.query<{ pid: number }>('SELECT pg_backend_pid() AS pid');
  return Number(/PPid:\s+(\d+)/.exec(readFileSync(`/proc/${rows[0]?.pid}/status`, 'utf8'))?.[1]);
}

function runRow(run: Run, before: Run | undefined): string[] {
  const doublings = before ? Math.log2(run.units / before.units) : 0;
  const each = before ? (run.cpu / before.cpu) ** (1 / doublings) / 2 : 1;
  return [
    'every due date worked out again',
    `${run.seconds.toFixed(1)} s, ${(run.cpu / 1000).toFixed(1)} s CPU`,
    '-',
    '-',
    `at most: ${sizesOf(run)}; a server with nothing to work out ${run.idle.toFixed(0)} MB`,
    `${run.units} units${before ? `; ${each.toFixed(2)} × linear per doubling` : ''}`,
  ];
}

async function listRows(
  shop: BenchShop,
  port: number,
  { sql, units }: { sql: pg.Client; units: number },
): Promise<string[][]> {
  const { rows } = await sql.query<{ id: string }>("SELECT id FROM customers WHERE code = 'DUE-0'");
  const customer = rows[0]?.id ?? '';
  const figures: string[][] = [];
  for (const limit of [50, 200]) {
    const point: number[] = [];
    const list: number[] = [];
    for (let n = 0; n < requests; n += 1) {
      point.push(await timed(shop, port, `/api/inventory/lots/${shop.lots[n % shop.lots.length]}`));
      list.push(await timed(shop, port, `/api/coming-due?customerId=${customer}&days=3660&limit=${limit}`));
    }
    const [ours, twin] = [median(list.slice(50)), median(point.slice(50))];
    figures.push([
      `due list of a customer of ${aircraftOfCustomer} aircraft, ${limit} rows (twin: one lot)`,
      ...[
        `${ours.toFixed(2)} ms`,
        `${twin.toFixed(2)} ms`,
        (twin / ours).toFixed(2),
        `${(ours / twin).toFixed(1)} × the twin`,
      ],
      `${units} units`,
    ]);
  }
  const plan = await sql.query(`EXPLAIN (ANALYZE, BUFFERS) ${comingSql}`, [
    ...[customer, null, null, '2037-01-01', null, null, null, 51],
  ]);
  console.log(plan.rows.map((row) => Object.values(row)[0]).join('\n'));
  return figures;
}

async function timed(shop: BenchShop, port: number, path: string): Promise<number> {
  const answer = await send(port, { method: 'GET', path, headers: { cookie: shop.cookie } });
  if (answer.status !== 200) throw new Error(`${path} answered ${answer.status}: ${answer.body.slice(0, 300)}`);
  return answer.milliseconds;
}
