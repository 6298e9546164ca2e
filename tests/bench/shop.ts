import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { createApp } from '../../apps/server/src/app.ts';
import { asServer } from '../../apps/server/src/platform/database/server-role.ts';
import { startEmbeddedPostgres } from '../../apps/server/src/platform/embedded-postgres/start.ts';
import { applyMigrations } from '../../prisma/migrate.ts';
import { demoPassword } from '../../seed/data/people.ts';
import { seedIfEmpty, shopToday } from '../../seed/index.ts';
import { send } from './load.ts';

const lotCount = 300;
const openWorkOrders = 60;
const sessionSecret = 'the bench signs cookies with this, long enough';

/** A shop of a typical size on its own durable database, with someone signed in. */
export interface BenchShop {
  readonly lots: readonly string[];
  readonly bins: readonly [string, string];
  readonly workOrders: number;
  readonly cookie: string;
  readonly serverUrl: string;
  readonly inProcessPort: number;
  readonly environment: Record<string, string>;
  /** Ids of the newest movement and record entry: what a noted command made. */
  newest(): Promise<string[]>;
  /** Ends the server inside of this process, for what is measured in one of its own. */
  closeInProcess(): Promise<void>;
  close(): Promise<void>;
}

export async function openShop(): Promise<BenchShop> {
  const folder = await mkdtemp(join(tmpdir(), 'hubwright-bench-'));
  await chmod(folder, 0o711);
  const database = await startEmbeddedPostgres(folder);
  await applyMigrations(database.url);
  const folders = { filesFolder: join(folder, 'files'), keysFolder: join(folder, 'keys') };
  await seedIfEmpty(database.url, { today: shopToday(new Date()), filesFolder: folders.filesFolder });
  const sql = new pg.Client({ connectionString: database.url });
  await sql.connect();
  const { lots, bins } = await moreLots(sql);
  const workOrders = await moreWorkOrders(sql);
  await sql.query('ANALYZE');
  const options = { ...folders, databaseUrl: database.url, sessionSecret, requestsPerMinute: 1e9 };
  const running = await createApp(options);
  let closed: Promise<void> | undefined;
  const inProcessPort = Number(new URL(await running.listen(0)).port);
  return {
    ...{ lots, bins, workOrders, inProcessPort },
    cookie: await signIn(inProcessPort),
    serverUrl: asServer(database.url),
    environment: {
      DATABASE_URL: database.url,
      SESSION_SECRET: sessionSecret,
      HUBWRIGHT_DATA: folder,
      HUBWRIGHT_REQUESTS_PER_MINUTE: '1000000000',
    },
    newest: () => newestOf(sql),
    closeInProcess() {
      closed ??= running.close();
      return closed;
    },
    async close() {
      await sql.end();
      await (closed ?? running.close());
      await database.stop();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function newestOf(sql: pg.Client): Promise<string[]> {
  const { rows } = await sql.query(
    '(SELECT id FROM movements ORDER BY sequence DESC LIMIT 1) UNION ALL (SELECT id FROM record_entries ORDER BY id DESC LIMIT 1)',
  );
  return rows.map((row) => row.id);
}

/** Lots with plenty in one bin, written directly: their history does not matter to the figures. */
async function moreLots(sql: pg.Client): Promise<{ lots: string[]; bins: [string, string] }> {
  const bins = (await sql.query('SELECT code FROM bins ORDER BY walk LIMIT 2')).rows.map((row) => row.code) as [
    string,
    string,
  ];
  const { rows } = await sql.query<{ id: string }>(
    `INSERT INTO lots (id, code, part_id, state, origin, source_class, supplier_lot, certificate, unit_price, received_at)
     SELECT uuidv7(), 'BENCH-' || n, (SELECT id FROM parts WHERE NOT serialised ORDER BY number LIMIT 1), 'accepted', 'purchase', 'maker-new', 'B' || n, 'C', '1.00', now()
     FROM generate_series(1, ${lotCount}) n RETURNING id`,
  );
  await sql.query(
    `INSERT INTO balances (lot_id, place_kind, place_ref, on_hand)
     SELECT l.id, 'bin', b.code, 1000000 FROM lots l CROSS JOIN (SELECT unnest($1::text[]) AS code) b WHERE l.code LIKE 'BENCH-%'`,
    [bins],
  );
  return { lots: rows.map((row) => row.id), bins };
}

/** Open work orders up to the wanted number, copied from one the seed made, each with a unit of its own. */
async function moreWorkOrders(sql: pg.Client): Promise<number> {
  const { rows } = await sql.query('SELECT count(*)::int AS open FROM work_orders WHERE closed_at IS NULL');
  const missing = Math.max(0, openWorkOrders - rows[0].open);
  await sql.query(
    `WITH model AS (SELECT w.*, u.maker, u.part_number FROM work_orders w JOIN serialized_items u ON u.id = w.unit_id WHERE w.closed_at IS NULL ORDER BY w.id LIMIT 1),
     units AS (INSERT INTO serialized_items (id, kind, model_id, maker, part_number, serial, created_at)
       SELECT uuidv7(), 'assembly', m.model_id, m.maker, m.part_number, 'BENCH' || n, now() FROM model m, generate_series(1, $1::int) n RETURNING id, serial)
     INSERT INTO work_orders (id, number, customer_id, unit_id, model_id, revision_id, scope, stage, stage_since, consent, consent_since, received_on, reason)
     SELECT uuidv7(), 'WO-B' || substr(u.serial, 6), m.customer_id, u.id, m.model_id, m.revision_id, m.scope, 'received', now(), 'estimate-due', now(), current_date, 'bench'
     FROM units u, model m`,
    [missing],
  );
  return rows[0].open + missing;
}

export async function signIn(port: number, signInName = 'parts'): Promise<string> {
  const response = await fetch(`http://127.0.0.1:${port}/api/session`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'idempotency-key': `bench-sign-in-${signInName}` },
    body: JSON.stringify({ signInName, password: demoPassword }),
  });
  if (!response.ok) throw new Error(`Nobody could sign in: ${response.status} ${await response.text()}`);
  // The session's and the device's.
  const cookie = response.headers
    .getSetCookie()
    .map((one) => one.split(';')[0])
    .join('; ');
  await send(port, { method: 'GET', path: '/api/session', headers: { cookie } });
  return cookie;
}
