import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readdir, readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { canonicalJson } from '@hubwright/rules/chain';
import pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import { knownMigrations } from '../../../../../prisma/migrate.ts';
import { KeyFolder, signText } from '../records/shop-key.ts';
import { takeAnchor } from '../records/take-anchor.ts';
import { ArchiveWriter, Sum } from './archive.ts';
import { type Beginning, backupFormat, type Ending, isKeyName, pieces, type TableSum } from './contents.ts';
import { copyText, storedColumns, tablesInOrder } from './tables.ts';

export interface BackupOptions {
  readonly url: string;
  readonly filesFolder: string;
  readonly keysFolder: string;
  readonly at: Date;
  /** Encrypts the backup. Only then do the shop's private keys go in. */
  readonly passphrase?: string | undefined;
}

const chunkBytes = 4_000_000;

/**
 * Writes one file with every table as it stood at one moment, the stored files and, when encrypted, the shop's keys. People
 * go on working meanwhile. The file gets its name only when it is whole and on disk.
 */
export async function writeBackup(file: string, options: BackupOptions): Promise<Ending> {
  const keys = new KeyFolder(options.keysFolder);
  await takeAnchor(options.url, keys, options.at);
  const client = new pg.Client({ connectionString: options.url });
  await client.connect();
  const archive = new ArchiveWriter(file, options.passphrase);
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    const ending = await fill(archive, client, options);
    const text = canonicalJson(ending);
    await archive.add(pieces.ending, Buffer.from(text));
    const key = ending.key ? await keys.find(ending.key) : undefined;
    await archive.add(pieces.signature, Buffer.from(key ? signText(key, text) : ''));
    await archive.end();
    return ending;
  } catch (error) {
    await archive.abandon();
    throw error;
  } finally {
    await client.end();
  }
}

async function fill(archive: ArchiveWriter, client: pg.Client, options: BackupOptions): Promise<Ending> {
  const beginning = canonicalJson(await beginningOf(client, options.at));
  await archive.add(pieces.beginning, Buffer.from(beginning));
  const tables: Record<string, TableSum> = {};
  for (const table of await tablesInOrder(client)) tables[table] = await addTable(archive, client, table);
  if (options.passphrase) await addKeys(archive, options.keysFolder);
  const { rows } = await client.query<{ hash: string }>('SELECT hash FROM stored_files ORDER BY hash');
  const kept: string[] = [];
  const missing: string[] = [];
  for (const { hash } of rows) ((await addFile(archive, options.filesFolder, hash)) ? kept : missing).push(hash);
  const anchors = await client.query<{ sequence: number; hash: string }>(
    'SELECT sequence, hash FROM anchors ORDER BY sequence DESC LIMIT 1',
  );
  const keys = await client.query<{ id: string }>('SELECT id FROM shop_keys ORDER BY sequence DESC LIMIT 1');
  return {
    beginning: createHash('sha256').update(beginning).digest('hex'),
    tables,
    files: kept,
    missingFiles: missing,
    anchor: anchors.rows[0] ?? null,
    key: keys.rows[0]?.id ?? null,
  };
}

async function beginningOf(client: pg.Client, at: Date): Promise<Beginning> {
  const { rows } = await client.query<{ version: string; shop: string | null }>(
    `SELECT current_setting('server_version') AS version, (SELECT name FROM shop_profile) AS shop`,
  );
  const schema = (await knownMigrations()).map(({ name, checksum }) => ({ name, checksum }));
  return {
    format: backupFormat,
    at: at.toISOString(),
    shop: rows[0]?.shop ?? '',
    schema,
    postgres: rows[0]?.version ?? '',
  };
}

/** PostgreSQL's own text form of the rows, in pieces small enough to hold. */
async function addTable(archive: ArchiveWriter, client: pg.Client, table: string): Promise<TableSum> {
  const columns = await storedColumns(client, table);
  await archive.add(pieces.columns(table), Buffer.from(JSON.stringify(columns)));
  const sum = new Sum();
  const stream = client.query(copyTo(`COPY ${copyText(table, columns)} TO STDOUT`));
  let held: Buffer[] = [];
  let size = 0;
  let chunk = 0;
  const flush = async () => {
    if (size > 0) await archive.add(pieces.rows(table, ++chunk), Buffer.concat(held));
    held = [];
    size = 0;
  };
  for await (const piece of stream as AsyncIterable<Buffer>) {
    sum.add(piece);
    held.push(piece);
    size += piece.length;
    if (size >= chunkBytes) await flush();
  }
  await flush();
  // How many rows it were is told with the end of the command, which may come in a packet behind the last row: whatever is asked
  // next is answered after it.
  await client.query('SELECT 1');
  return { rows: stream.rowCount ?? 0, ...sum.end() };
}

async function addFile(archive: ArchiveWriter, folder: string, hash: string): Promise<boolean> {
  const path = join(folder, hash.slice(0, 2), hash);
  const found = await stat(path).catch(() => undefined);
  if (!found) return false;
  await archive.addFile(pieces.file(hash), found.size, createReadStream(path));
  return true;
}

async function addKeys(archive: ArchiveWriter, folder: string): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  for (const name of names.filter(isKeyName)) await archive.add(pieces.key(name), await readFile(join(folder, name)));
}
