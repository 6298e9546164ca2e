import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import pg from 'pg';
import { ensureRoles } from '../apps/server/src/platform/database/server-role.ts';
import { openEngine } from './engine.ts';

/** The repository's root, both from the source and from the server's bundle. */
const root = (() => {
  for (let at = dirname(fileURLToPath(import.meta.url)); ; at = dirname(at)) {
    if (existsSync(join(at, 'prisma/migrations/migration_lock.toml'))) return at;
    if (at === dirname(at)) throw new Error('prisma/migrations was not found above the program.');
  }
})();
const migrationsFolder = join(root, 'prisma/migrations');
const noFilters = { externalTables: [], externalEnums: [] };
const migrationLock = 4_720_117; // any number, as long as every starting server asks for the same one

export type Migration = { name: string; sql: string; checksum: string };
export type SchemaVersion = 'current' | 'behind' | 'ahead' | 'damaged';

/** The migrations of this program, oldest first. */
export async function knownMigrations(): Promise<Migration[]> {
  const entries = await readdir(migrationsFolder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return Promise.all(
    names.sort().map(async (name) => {
      const sql = await readFile(join(migrationsFolder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    }),
  );
}

async function schemaFiles(): Promise<{ path: string; content: string }[]> {
  const folder = join(root, 'prisma/schema');
  const names = (await readdir(folder)).filter((name) => name.endsWith('.prisma')).sort();
  return Promise.all(names.map(async (path) => ({ path, content: await readFile(join(folder, path), 'utf8') })));
}

/**
 * Compares the migration files with what the database says was applied. `behind`: some are missing there; `ahead`: it
 * has some that are not here (an older program); `damaged`: an applied file was edited, or one failed halfway.
 */
export async function schemaVersionState(url: string): Promise<SchemaVersion> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await compareVersions(client);
  } finally {
    await client.end();
  }
}

async function compareVersions(client: pg.Client): Promise<SchemaVersion> {
  const { rows: tables } = await client.query("SELECT to_regclass('_prisma_migrations') AS name");
  if (!tables[0].name) return 'behind';
  const { rows } = await client.query<{ name: string; checksum: string; finished: boolean }>(
    `SELECT migration_name AS name, checksum, finished_at IS NOT NULL AS finished
       FROM _prisma_migrations WHERE rolled_back_at IS NULL`,
  );
  const files = await knownMigrations();
  if (rows.some((row) => !row.finished)) return 'damaged';
  if (rows.some((row) => !files.some((file) => file.name === row.name))) return 'ahead';
  const applied = new Map(rows.map((row) => [row.name, row.checksum]));
  if (files.some((file) => (applied.get(file.name) ?? file.checksum) !== file.checksum)) return 'damaged';
  return files.every((file) => applied.has(file.name)) ? 'current' : 'behind';
}

/**
 * Brings the database up to the migration files and returns the names of those applied now. Several servers may start
 * at once: they wait for each other at an advisory lock. `url` must be the owner of the tables. With `only`, just those
 * named: an older state, to be filled from a backup of that time.
 */
export async function applyMigrations(url: string, only?: readonly string[]): Promise<string[]> {
  const lock = new pg.Client({ connectionString: url });
  await lock.connect();
  try {
    await lock.query('SELECT pg_advisory_lock($1)', [migrationLock]);
    await ensureRoles(lock);
    const version = await compareVersions(lock);
    if (version === 'current') return [];
    if (version !== 'behind')
      throw new Error(`The database is ${version} against prisma/migrations; nothing was changed.`);
    return await applyMissing(url, only);
  } finally {
    await lock.end();
  }
}

async function applyMissing(url: string, only: readonly string[] | undefined): Promise<string[]> {
  const engine = await openEngine(url, await schemaFiles());
  try {
    const lockfile = {
      path: 'migration_lock.toml',
      content: await readFile(join(migrationsFolder, 'migration_lock.toml'), 'utf8'),
    };
    const wanted = (await knownMigrations()).filter(({ name }) => only?.includes(name) ?? true);
    const migrationDirectories = wanted.map(({ name, sql }) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok' as const, value: sql } },
    }));
    const migrationsList = { baseDir: migrationsFolder, lockfile, shadowDbInitScript: '', migrationDirectories };
    return (await engine.schema.applyMigrations({ migrationsList, filters: noFilters })).appliedMigrationNames;
  } finally {
    await engine.close();
  }
}

/** The SQL that would turn this database into what prisma/schema draws; undefined when nothing is missing. */
export async function differenceFromSchema(url: string, from: 'database' | 'nothing' = 'database') {
  const files = await schemaFiles();
  const engine = await openEngine(url, files);
  const here = { tag: 'schemaDatasource', files, configDir: join(root, 'prisma') };
  try {
    const { stdout } = await engine.schema.diff({
      from: from === 'database' ? here : { tag: 'empty' },
      to: { tag: 'schemaDatamodel', files },
      script: true,
      exitCode: null,
      shadowDatabaseUrl: null,
      filters: noFilters,
    } as Parameters<typeof engine.schema.diff>[0]);
    return stdout && !stdout.includes('This is an empty migration') ? stdout : undefined;
  } finally {
    await engine.close();
  }
}

/** Writes the next migration from the difference between the applied ones and the schema. `url`: an empty database. */
async function writeMigration(url: string, name: string | undefined): Promise<string> {
  if (!name || !/^[a-z][a-z0-9_]*$/.test(name))
    throw new Error('Name the change, like new_bins: npm run db:migration -- new <name>');
  await applyMigrations(url);
  const sql = await differenceFromSchema(url);
  if (!sql) return 'Nothing to write: the migrations already make what prisma/schema draws.';
  const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
  const folder = join(migrationsFolder, `${stamp}_${name}`);
  await mkdir(folder);
  await writeFile(join(folder, 'migration.sql'), sql);
  return `Wrote ${folder}`;
}

/** Only until the first release: the first migration is drawn anew instead of stacking one on another. */
async function redrawFirst(url: string): Promise<string> {
  const [first] = await knownMigrations();
  const sql = await differenceFromSchema(url, 'nothing');
  if (!first || !sql) throw new Error('There is no first migration to draw anew.');
  await writeFile(join(migrationsFolder, first.name, 'migration.sql'), sql);
  return `Drew ${first.name} anew; databases made before this must be thrown away.`;
}

async function checkMigrations(url: string): Promise<string> {
  await applyMigrations(url);
  const missing = await differenceFromSchema(url);
  if (missing) throw new Error(`The migrations do not make what prisma/schema draws. Missing:\n${missing}`);
  return 'The migrations make exactly what prisma/schema draws.';
}

async function commandLine([verb, name]: string[]): Promise<string> {
  if (verb === 'apply' && process.env.DATABASE_URL) {
    return `Applied: ${(await applyMigrations(process.env.DATABASE_URL)).join(', ') || 'nothing was missing'}`;
  }
  const { withScratchDatabase } = await import('./scratch-database.ts');
  if (verb === 'new') return withScratchDatabase((url) => writeMigration(url, name));
  if (verb === 'redraw') return withScratchDatabase(redrawFirst);
  if (verb === 'check') return withScratchDatabase(checkMigrations);
  throw new Error('Say one of: new <name> | redraw | check | apply (which needs DATABASE_URL).');
}

if (process.argv[1]?.endsWith('migrate.ts') && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(await commandLine(process.argv.slice(2)));
}
