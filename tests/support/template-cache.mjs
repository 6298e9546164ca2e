// The invented shop takes seconds to play through its commands, and every run of the tests needs it. Its rows are kept
// under node_modules/.cache, named by the day and by a hash of all that decides them; a clean machine has none and plays it.
import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Sources that decide the rows: the seed, the tables, the write path, and the departments whose commands it runs. */
const deciding = [
  'seed',
  'prisma/migrations',
  'apps/server/src/platform/command',
  ...['people', 'customers', 'manuals', 'processes'].flatMap((noun) => [
    `apps/server/src/modules/${noun}`,
    `packages/contracts/src/${noun}`,
  ]),
  'apps/server/src/modules/inventory/add-part.command.ts',
  'apps/server/src/modules/inventory/add-bin.command.ts',
  'apps/server/src/modules/inventory/alternates.ts',
  'apps/server/src/modules/purchasing/add-supplier.command.ts',
  'packages/contracts/src/inventory/part-operations.ts',
  'packages/contracts/src/values.ts',
  'packages/rules/src/chain',
  'packages/rules/src/kit-list',
];

/** The day as the invented shop counts it (seed/data/shop.ts). */
const shopDay = new Intl.DateTimeFormat('sv-SE', { timeZone: 'America/Chicago' });

/** Where the rows of today's shop are kept, whether or not they are there yet. */
export async function cachedShopFile() {
  const hash = createHash('sha256').update(shopDay.format(new Date()));
  for (const path of deciding) {
    for (const file of await filesOf(join(root, path))) hash.update(file).update(await readFile(file));
  }
  return join(root, 'node_modules/.cache/hubwright', `shop-${hash.digest('hex').slice(0, 24)}.json`);
}

async function filesOf(path) {
  if ((await stat(path)).isFile()) return [path];
  const names = await readdir(path, { recursive: true, withFileTypes: true });
  return names
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** Keeps every row of a filled database, in place of those of earlier days and sources. */
export async function keepRows(client, file) {
  const { rows: tables } = await client.query(
    `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations' ORDER BY 1`,
  );
  const kept = {};
  for (const { name } of tables) {
    const { rows } = await client.query(`SELECT coalesce(json_agg(t), '[]')::text AS rows FROM "${name}" t`);
    kept[name] = rows[0].rows;
  }
  const folder = dirname(file);
  await mkdir(folder, { recursive: true });
  const stale = (await readdir(folder)).filter((name) => name.startsWith('shop-'));
  for (const name of stale) await rm(join(folder, name), { force: true });
  await writeFile(`${file}.${process.pid}`, JSON.stringify(kept));
  await rename(`${file}.${process.pid}`, file);
}

/** Puts kept rows into a database that has every table and no row. The client must be a superuser: rows arrive in any order. */
export async function restoreRows(client, file) {
  const kept = JSON.parse(await readFile(file, 'utf8'));
  await client.query("SET session_replication_role = 'replica'");
  for (const [name, rows] of Object.entries(kept))
    await client.query(`INSERT INTO "${name}" SELECT * FROM json_populate_recordset(NULL::"${name}", $1)`, [rows]);
  const { rows: counted } = await client.query(
    `SELECT table_name, column_name FROM information_schema.columns WHERE table_schema = 'public' AND column_default LIKE 'nextval%'`,
  );
  for (const { table_name: table, column_name: column } of counted)
    await client.query(
      `SELECT setval(pg_get_serial_sequence('"${table}"', '${column}'), coalesce(max("${column}"), 0) + 1, false) FROM "${table}"`,
    );
}
