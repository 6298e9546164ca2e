import { createHash } from 'node:crypto';
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Writable } from 'node:stream';
import { finished } from 'node:stream/promises';
import pg from 'pg';
import { from as copyFrom } from 'pg-copy-streams';
import { Damaged, type Piece, readArchive, Sum } from './archive.ts';
import { type Beginning, backupFormat, type Ending, isKeyName, pieces } from './contents.ts';
import { copyText, moveSequences, storedColumns } from './tables.ts';

export interface ReadOptions {
  readonly filesFolder: string;
  readonly keysFolder: string;
  readonly passphrase?: string | undefined;
}

/** What a backup says of itself, without reading further. @throws Damaged */
export async function beginningOf(file: string, passphrase: string | undefined): Promise<Beginning> {
  for await (const piece of readArchive(file, passphrase)) return parseBeginning(await textOf(piece));
  throw new Damaged('The backup is empty.');
}

function parseBeginning(text: string): Beginning {
  const beginning = parsed<Beginning>(text, pieces.beginning);
  if (beginning.format !== backupFormat)
    throw new Damaged(`This program reads ${backupFormat}, and this is ${String(beginning.format)}.`);
  return beginning;
}

/**
 * Fills an empty, migrated database, a files folder and a keys folder. The rows are one transaction that is committed only
 * after every sum agreed, so that a damaged or cut backup leaves the database empty. @throws Damaged
 */
export async function readBackup(file: string, url: string, options: ReadOptions): Promise<Ending> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query('BEGIN');
    const reading = new Reading(client, options);
    for await (const piece of readArchive(file, options.passphrase)) await reading.take(piece);
    const ending = reading.end();
    await moveSequences(client);
    await client.query('COMMIT');
    return ending;
  } finally {
    await client.end();
  }
}

/** Takes the pieces in the order they were written, and compares them with what the last one says. */
class Reading {
  private beginning: string | undefined;
  private ending: Ending | undefined;
  private readonly tables: Record<string, { rows: number; bytes: number; sha256: string }> = {};
  private readonly files: string[] = [];
  private filling: Filling | undefined;

  constructor(
    private readonly client: pg.Client,
    private readonly options: ReadOptions,
  ) {}

  async take(piece: Piece): Promise<void> {
    const [kind = '', name = '', rest] = piece.name.split('/');
    if (this.ending && piece.name !== pieces.signature) throw new Damaged(`Something follows the end: ${piece.name}`);
    if (kind === 'tables' && rest !== 'columns.json') return this.addRows(name, piece);
    await this.endTable();
    if (kind === 'files') return this.keepFile(name, piece);
    if (kind === 'keys') return this.keepKey(name, await bytesOf(piece));
    const text = await textOf(piece);
    if (kind === 'tables') return this.beginTable(name, text);
    if (piece.name === pieces.beginning) {
      parseBeginning(text);
      this.beginning = text;
    } else if (piece.name === pieces.ending) this.ending = parsed<Ending>(text, pieces.ending);
    else if (piece.name !== pieces.signature) throw new Damaged(`The backup holds something unknown: ${piece.name}`);
  }

  /** Everything arrived and agrees. */
  end(): Ending {
    const { ending } = this;
    if (!ending || this.beginning === undefined)
      throw new Damaged('The backup was cut short: its last piece is missing.');
    if (sha256(this.beginning) !== ending.beginning) throw new Damaged(`${pieces.beginning} was changed.`);
    const names = new Set([...Object.keys(ending.tables), ...Object.keys(this.tables)]);
    for (const name of names)
      if (JSON.stringify(this.tables[name]) !== JSON.stringify(ordered(ending.tables[name])))
        throw new Damaged(`Table ${name} is not what was backed up.`);
    if (JSON.stringify(this.files) !== JSON.stringify(ending.files))
      throw new Damaged('A stored file is missing from the backup.');
    return ending;
  }

  private async beginTable(name: string, text: string): Promise<void> {
    const columns = parsed<string[]>(text, pieces.columns(name));
    const known = /^[a-z_]+$/.test(name) ? await storedColumns(this.client, name) : [];
    const unknown = columns.find((column) => !known.includes(column));
    if (known.length === 0 || unknown !== undefined)
      throw new Damaged(
        `This program has no table ${name}${unknown === undefined ? '' : ` with a column ${unknown}`}.`,
      );
    this.filling = new Filling(name, this.client.query(copyFrom(`COPY ${copyText(name, columns)} FROM STDIN`)));
  }

  private async addRows(name: string, piece: Piece): Promise<void> {
    if (this.filling?.table !== name) throw new Damaged(`Rows of ${name} without their columns.`);
    for await (const bytes of piece.content) await this.filling.add(bytes);
  }

  private async endTable(): Promise<void> {
    if (!this.filling) return;
    const { table } = this.filling;
    this.tables[table] = await this.filling.end();
    this.filling = undefined;
  }

  private async keepFile(hash: string, piece: Piece): Promise<void> {
    if (!/^[0-9a-f]{64}$/.test(hash)) throw new Damaged(`${piece.name} is not the name of a stored file.`);
    const bytes = await bytesOf(piece);
    if (createHash('sha256').update(bytes).digest('hex') !== hash)
      throw new Damaged(`Stored file ${hash} was changed.`);
    await keep(join(this.options.filesFolder, hash.slice(0, 2), hash), bytes, 0o640);
    this.files.push(hash);
  }

  private async keepKey(name: string, bytes: Buffer): Promise<void> {
    if (!isKeyName(name)) throw new Damaged(`${name} is not the name of a key.`);
    await keep(join(this.options.keysFolder, name), bytes, 0o600);
  }
}

/** One table being filled by PostgreSQL's own copying. */
class Filling {
  private readonly sum = new Sum();
  private failed: Error | undefined;

  constructor(
    readonly table: string,
    private readonly stream: Writable & { rowCount: number | null },
  ) {
    stream.on('error', (error) => {
      this.failed = new Damaged(`Table ${table} cannot be filled: ${error.message}`);
    });
  }

  async add(bytes: Uint8Array): Promise<void> {
    this.sum.add(bytes);
    if (this.failed) throw this.failed;
    if (!this.stream.write(bytes))
      await new Promise((resolve) => this.stream.once('drain', resolve).once('error', resolve));
  }

  async end(): Promise<{ rows: number; bytes: number; sha256: string }> {
    this.stream.end();
    await finished(this.stream).catch((error: Error) => {
      throw this.failed ?? error;
    });
    return { rows: this.stream.rowCount ?? 0, ...this.sum.end() };
  }
}

function ordered(sum: Ending['tables'][string] | undefined) {
  return sum && { rows: sum.rows, bytes: sum.bytes, sha256: sum.sha256 };
}

async function keep(path: string, bytes: Uint8Array, mode: number): Promise<void> {
  await mkdir(dirname(path), { recursive: true, mode: 0o750 });
  await writeFile(path, bytes, { mode });
}

async function bytesOf(piece: Piece): Promise<Buffer> {
  const parts: Uint8Array[] = [];
  for await (const part of piece.content) parts.push(part);
  return Buffer.concat(parts);
}

async function textOf(piece: Piece): Promise<string> {
  if (piece.size > 50_000_000) throw new Damaged(`${piece.name} is too large to be what it says.`);
  return (await bytesOf(piece)).toString('utf8');
}

function parsed<T>(text: string, name: string): T {
  try {
    return JSON.parse(text) as T;
  } catch {
    throw new Damaged(`${name} is not readable.`);
  }
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
