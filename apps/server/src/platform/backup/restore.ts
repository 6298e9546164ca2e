import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import pg from 'pg';
import { applyMigrations, knownMigrations } from '../../../../../prisma/migrate.ts';
import { homeOf } from '../embedded-postgres/cluster.ts';
import { discardEmbedded, startEmbeddedPostgres } from '../embedded-postgres/start.ts';
import { verifyDatabase } from '../records/verify-database.ts';
import { Damaged } from './archive.ts';
import type { Beginning, Ending } from './contents.ts';
import { beginningOf, readBackup } from './read-backup.ts';

export interface RestoreOptions {
  readonly passphrase?: string | undefined;
  /** The name of the shop that stands there now, typed by whoever wants it replaced. */
  readonly replace?: string | undefined;
  readonly at: Date;
}

/** What stood at the place of a restore was not agreed to be replaced, or cannot be. */
export class Refused extends Error {}

/**
 * Restores a backup into a data folder with an embedded database. All of it is built and verified beside its place, and moved
 * there at the end; what stood there is moved aside, never deleted. @throws Damaged, Refused; then nothing has changed
 */
export async function restoreFolder(file: string, dataFolder: string, options: RestoreOptions): Promise<Ending> {
  const beginning = await beginningOf(file, options.passphrase);
  await refuseOtherSchema(beginning);
  const occupied = (await readdir(dataFolder).catch(() => [])).length > 0;
  if (occupied) await agreeToReplace(dataFolder, options.replace);
  const half = halfOf(dataFolder);
  await discardEmbedded(half);
  await mkdir(half, { recursive: true, mode: 0o711 });
  const embedded = await startEmbeddedPostgres(half);
  let ending: Ending;
  try {
    ending = await fill(file, embedded.url, { ...options, folder: half, beginning });
  } finally {
    await embedded.stop();
  }
  if (occupied) await rename(dataFolder, `${dataFolder.replace(/\/+$/, '')}.before-${stampOf(options.at)}`);
  else await rm(dataFolder, { recursive: true, force: true });
  await rename(half, dataFolder);
  return ending;
}

/** Restores into an empty database of a real server, and an empty folder of files and keys. @throws Damaged, Refused */
export async function restoreDatabase(
  file: string,
  { url, folder }: { url: string; folder: string },
  options: RestoreOptions,
): Promise<Ending> {
  const beginning = await beginningOf(file, options.passphrase);
  await refuseOtherSchema(beginning);
  if (await holdsTables(url)) throw new Refused('The database is not empty; restore into an empty one.');
  return fill(file, url, { ...options, folder, beginning });
}

/** A restore that was cut short at its very end must not be answered with a new, empty shop. */
export function refuseHalfRestored(dataFolder: string): void {
  if (existsSync(dataFolder) || !existsSync(halfOf(dataFolder))) return;
  throw new Error(
    `A restore into ${dataFolder} was cut short. Restore again, or move the folder ${dataFolder}.before-… back to its name.`,
  );
}

const halfOf = (dataFolder: string) => `${dataFolder.replace(/\/+$/, '')}.restoring`;

async function fill(
  file: string,
  url: string,
  { passphrase, folder, beginning }: RestoreOptions & { folder: string; beginning: Beginning },
): Promise<Ending> {
  await applyMigrations(
    url,
    beginning.schema.map(({ name }) => name),
  );
  const filesFolder = join(folder, 'files');
  const ending = await readBackup(file, url, { filesFolder, keysFolder: join(folder, 'keys'), passphrase });
  await applyMigrations(url);
  const { faults } = await verifyDatabase(url, filesFolder);
  const unexpected = faults.filter(({ place }) => !ending.missingFiles.includes(place.replace('file ', '')));
  if (unexpected[0])
    throw new Damaged(`The records in the backup do not hold: ${unexpected[0].place}: ${unexpected[0].reason}`);
  return ending;
}

async function refuseOtherSchema({ schema }: Beginning): Promise<void> {
  const known = await knownMigrations();
  const newer = schema.find(({ name }) => !known.some((migration) => migration.name === name));
  if (newer) throw new Refused(`The backup was written by a newer program (${newer.name}): restore it with that one.`);
  const other = schema.find(({ name, checksum }) => known.find((one) => one.name === name)?.checksum !== checksum);
  if (other) throw new Refused(`The backup was written by a program with another ${other.name}.`);
}

async function agreeToReplace(dataFolder: string, replace: string | undefined): Promise<void> {
  if (!existsSync(join(await homeOf(dataFolder), 'data')))
    throw new Refused(`${dataFolder} holds something that is not a shop: move it away, or restore elsewhere.`);
  const embedded = await startEmbeddedPostgres(dataFolder); // refuses while a server runs on it
  try {
    const shop = await shopNameOf(embedded.url);
    if (replace === undefined || replace !== shop)
      throw new Refused(`${dataFolder} holds the shop "${shop}". To replace it, add --replace "${shop}".`);
  } finally {
    await embedded.stop();
  }
}

async function shopNameOf(url: string): Promise<string> {
  return withClient(url, async (client) => {
    const { rows: tables } = await client.query(`SELECT to_regclass('shop_profile') AS found`);
    if (!tables[0].found) return '';
    const { rows } = await client.query<{ name: string }>('SELECT name FROM shop_profile');
    return rows[0]?.name ?? '';
  });
}

async function holdsTables(url: string): Promise<boolean> {
  return withClient(url, async (client) => {
    const { rowCount } = await client.query(
      `SELECT 1 FROM pg_class WHERE relkind = 'r' AND relnamespace = 'public'::regnamespace LIMIT 1`,
    );
    return (rowCount ?? 0) > 0;
  });
}

async function withClient<T>(url: string, use: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await use(client);
  } finally {
    await client.end();
  }
}

function stampOf(at: Date): string {
  return at.toISOString().slice(0, 19).replaceAll(/[-:]/g, '').replace('T', '-');
}
