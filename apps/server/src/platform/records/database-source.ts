import { createReadStream } from 'node:fs';
import { access } from 'node:fs/promises';
import { join } from 'node:path';
import type pg from 'pg';
import { eachRow } from '../database/each-row.ts';
import type { KeyRow } from './shop-key.ts';
import { signatureTableNames, signedText } from './signed-text.ts';
import type {
  AnchoredRow,
  AnchorRow,
  FileRow,
  HeadRow,
  LinkRow,
  PurgeRow,
  RecordSource,
  SealedRow,
  SigningEntry,
  SignOffRow,
  UnkeptFile,
} from './source.ts';

/** Makes texts the same wherever and whenever they are read. */
export const plainTexts = `SET LOCAL TimeZone = 'UTC'; SET LOCAL DateStyle = 'ISO, YMD'; SET LOCAL IntervalStyle = 'postgres';
  SET LOCAL bytea_output = 'hex'; SET LOCAL extra_float_digits = 1`;

const chainOrder = (row: string) => `${row}.subject_kind COLLATE "C", ${row}.subject_id, ${row}.sequence`;

/**
 * The records of a database. `client` must be in a read-only transaction of its own (repeatable read), so that what is
 * checked is one moment.
 */
export class DatabaseSource implements RecordSource {
  constructor(
    private readonly client: pg.Client | pg.PoolClient,
    private readonly filesFolder: string | undefined,
  ) {}

  async *links(): AsyncIterable<LinkRow> {
    const rows = eachRow<LinkRow & { command: string; person: string; at: Date }>(
      this.client,
      `SELECT l.subject_kind AS kind, l.subject_id AS id, l.sequence, l.previous, l.hash, e.body, e.command, e.person_id AS person, e.at
       FROM record_links l LEFT JOIN record_entries e ON e.id = l.entry_id ORDER BY ${chainOrder('l')}`,
    );
    for await (const { command, person, at, ...link } of rows)
      yield link.body === null ? link : { ...link, columns: { command, person, at: at.toISOString() } };
  }

  heads(): AsyncIterable<HeadRow> {
    return eachRow(
      this.client,
      `SELECT h.subject_kind AS kind, h.subject_id AS id, h.sequence, h.hash FROM record_heads h ORDER BY ${chainOrder('h')}`,
    );
  }

  anchoredByChain(): AsyncIterable<AnchoredRow> {
    return eachRow(this.client, `${anchoredSql} ORDER BY ${chainOrder('a')}`);
  }

  anchoredByAnchor(): AsyncIterable<AnchoredRow> {
    return eachRow(this.client, `${anchoredSql} ORDER BY a.anchor, ${chainOrder('a')}`);
  }

  anchors(): AsyncIterable<AnchorRow> {
    return eachRow(
      this.client,
      'SELECT sequence, body, hash, key_id AS "keyId", signature FROM anchors ORDER BY sequence',
    );
  }

  async keys(): Promise<KeyRow[]> {
    const { rows } = await this.client.query<KeyRow>(
      'SELECT id, statement, signature, previous_signature AS "previousSignature" FROM shop_keys ORDER BY sequence',
    );
    return rows;
  }

  async purges(): Promise<PurgeRow[]> {
    const { rows } = await this.client.query<PurgeRow>(
      'SELECT id, body, key_id AS "keyId", signature FROM purges ORDER BY at, id',
    );
    return rows;
  }

  async *looseEntries(): AsyncIterable<string> {
    const rows = eachRow<{ id: string }>(
      this.client,
      'SELECT id FROM record_entries e WHERE NOT EXISTS (SELECT 1 FROM record_links l WHERE l.entry_id = e.id)',
    );
    for await (const { id } of rows) yield id;
  }

  sealedTables(): Promise<string[]> {
    return sealedTables(this.client);
  }

  sealedRows(table: string): AsyncIterable<SealedRow> {
    return sealedRows(this.client, table);
  }

  async *signOffs(): AsyncIterable<SignOffRow> {
    for (const table of signatureTableNames)
      for await (const row of eachRow<SignOffRow>(
        this.client,
        `SELECT s.id, s.content::text AS content, s.content_hash AS "contentHash", e.body AS entry
         FROM "${table}" s LEFT JOIN record_entries e ON e.id = s.entry_id ORDER BY s.id`,
      ))
        yield { ...row, content: signedText(table, row.content) };
  }

  async *signingEntries(): AsyncIterable<SigningEntry> {
    const ids = signatureTableNames.map((table) => `SELECT s.id::text FROM "${table}" s WHERE s.entry_id = e.id`);
    const rows = eachRow<{ id: string; body: string; signOffs: string[] }>(
      this.client,
      `SELECT e.id, e.body, array(${ids.join(' UNION ALL ')}) AS "signOffs"
       FROM record_entries e WHERE e.body LIKE '%"signOffs":[%' ORDER BY e.id`,
    );
    for await (const { signOffs, ...entry } of rows) yield { ...entry, signOffs: new Set(signOffs) };
  }

  files(): AsyncIterable<FileRow> {
    return this.filesFolder === undefined
      ? none()
      : eachRow(this.client, 'SELECT hash, size FROM stored_files ORDER BY hash');
  }

  async *unkeptFiles(): AsyncIterable<UnkeptFile> {
    for (const { table, column } of await fileColumns(this.client))
      yield* eachRow<UnkeptFile>(
        this.client,
        `SELECT 'table ${table}, row ' || t.id AS place, t."${column}" AS hash FROM "${table}" t
         WHERE t."${column}" IS NOT NULL AND NOT EXISTS (SELECT 1 FROM stored_files f WHERE f.hash = t."${column}") ORDER BY t.id`,
      );
  }

  async fileBytes(hash: string): Promise<AsyncIterable<Uint8Array> | undefined> {
    const path = join(this.filesFolder ?? '', hash.slice(0, 2), hash);
    return access(path).then(
      () => createReadStream(path),
      () => undefined,
    );
  }
}

const anchoredSql = `SELECT a.anchor, a.subject_kind AS kind, a.subject_id AS id, a.after, a.sequence, a.hash FROM anchored_heads a`;

/** Tables whose rows are only added and name the entry that wrote them. */
export async function sealedTables(client: pg.Client | pg.PoolClient): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT c.relname AS name FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid
     JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname = 'entry_id' AND NOT a.attisdropped
     WHERE t.tgname = 'only added' AND c.relname <> 'record_links' ORDER BY c.relname`,
  );
  return rows.map(({ name }) => name);
}

/** Columns that name kept files in tables whose rows are only added. */
async function fileColumns(client: pg.Client | pg.PoolClient): Promise<{ table: string; column: string }[]> {
  const { rows } = await client.query<{ table: string; column: string }>(
    `SELECT c.relname AS table, a.attname AS column FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid
     JOIN pg_attribute a ON a.attrelid = c.oid AND a.attname LIKE '%file\\_hash' AND NOT a.attisdropped
     WHERE t.tgname = 'only added' ORDER BY c.relname, a.attname`,
  );
  return rows;
}

export async function columnsOf(client: pg.Client | pg.PoolClient, table: string): Promise<string[]> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT attname AS name FROM pg_attribute WHERE attrelid = to_regclass($1) AND attnum > 0 AND NOT attisdropped ORDER BY attname`,
    [table],
  );
  return rows.map(({ name }) => name);
}

/** The rows that the entries of each anchor wrote; of one anchor alone when it is given. */
export async function* sealedRows(
  client: pg.Client | pg.PoolClient,
  table: string,
  anchor?: number,
): AsyncGenerator<SealedRow> {
  const columns = await columnsOf(client, table);
  const texts = columns.map((name) => `'${name}', t."${name}"::text`).join(', ');
  yield* eachRow<SealedRow>(
    client,
    `WITH covered AS (
       SELECT l.entry_id, min(a.anchor) AS anchor FROM anchored_heads a
       JOIN record_links l ON l.subject_kind = a.subject_kind AND l.subject_id = a.subject_id
         AND l.sequence > a.after AND l.sequence <= a.sequence
       WHERE ${anchor === undefined ? 'true' : `a.anchor = ${Number(anchor)}`} GROUP BY l.entry_id
     )
     SELECT c.anchor, jsonb_build_object(${texts}) AS values FROM covered c
     JOIN "${table}" t ON t.entry_id = c.entry_id ORDER BY c.anchor, t.entry_id, t.id`,
  );
}

async function* none(): AsyncGenerator<never> {}
