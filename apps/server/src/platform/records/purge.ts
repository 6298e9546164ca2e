import { unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { canonicalJson } from '@hubwright/rules/chain';
import type pg from 'pg';
import { type AnchorBody, type Digest, Lines, rowLine } from './anchor.ts';
import type { PurgeBody } from './check-purges.ts';
import { plainTexts, sealedRows } from './database-source.ts';
import { type ShopKey, signText } from './shop-key.ts';
import type { HeadRow } from './source.ts';

/** What to destroy. Chains go whole; an entry that another chain holds too stays until that chain's turn. */
export interface PurgeOrder {
  readonly id: string;
  readonly at: Date;
  readonly by: string;
  readonly policy: string;
  readonly what: string;
  readonly chains: readonly { readonly kind: string; readonly id: string }[];
  /** Rows by table, in an order that no reference forbids. */
  readonly rows: readonly { readonly table: string; readonly ids: readonly string[] }[];
  readonly files: readonly string[];
}

/**
 * Destroys records and leaves a proof signed with the shop's key. `client` is the owner's, outside any transaction; the
 * destroying itself runs as the role hubwright_retention, which the running server is not. The records must verify before,
 * and every one of them be covered by an anchor: the caller sees to both.
 */
export async function purge(client: pg.Client, order: PurgeOrder, key: ShopKey): Promise<PurgeBody> {
  await client.query('BEGIN');
  try {
    await client.query(plainTexts);
    await client.query('SET LOCAL ROLE hubwright_retention');
    const proof: PurgeBody = { ...(await destroy(client, order)), key: key.id };
    const body = canonicalJson(proof);
    await client.query('INSERT INTO purges (id, at, body, key_id, signature) VALUES ($1, $2, $3, $4, $5)', [
      order.id,
      order.at,
      body,
      key.id,
      signText(key, body),
    ]);
    await client.query('COMMIT');
    return proof;
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  }
}

async function destroy(client: pg.Client, order: PurgeOrder): Promise<Omit<PurgeBody, 'key'>> {
  const chains = await headsOf(client, order.chains);
  const anchors = await anchorsCovering(client, chains);
  for (const { table, ids } of order.rows)
    await client.query(`DELETE FROM "${table}" WHERE id = ANY ($1::uuid[])`, [ids]);
  const entries = await removeChains(client, chains);
  await client.query('DELETE FROM stored_files WHERE hash = ANY ($1::text[])', [order.files]);
  const rows: PurgeBody['rows'][number][] = [];
  for (const anchor of anchors) rows.push(...(await whatIsLeft(client, anchor)));
  const { id, at, by, policy, what, files } = order;
  return { kind: 'purge', id, at: at.toISOString(), by, policy, what, chains, rows, entries, files };
}

/** After the rows are gone: files that nothing names any more. */
export async function removeFiles(folder: string, hashes: readonly string[]): Promise<void> {
  for (const hash of hashes) await unlink(join(folder, hash.slice(0, 2), hash)).catch(() => undefined);
}

async function headsOf(client: pg.Client, chains: PurgeOrder['chains']): Promise<HeadRow[]> {
  const { rows } = await client.query<HeadRow>(
    `SELECT h.subject_kind AS kind, h.subject_id AS id, h.sequence, h.hash FROM record_heads h
     JOIN jsonb_to_recordset($1::jsonb) AS c(kind text, id uuid) ON c.kind = h.subject_kind AND c.id = h.subject_id
     WHERE h.sequence > 0 ORDER BY h.subject_kind COLLATE "C", h.subject_id`,
    [JSON.stringify(chains)],
  );
  return rows;
}

async function anchorsCovering(client: pg.Client, chains: readonly HeadRow[]): Promise<AnchorBody[]> {
  const { rows } = await client.query<{ body: string }>(
    `SELECT body FROM anchors WHERE sequence IN (
       SELECT a.anchor FROM anchored_heads a
       JOIN jsonb_to_recordset($1::jsonb) AS c(kind text, id uuid) ON c.kind = a.subject_kind AND c.id = a.subject_id
     ) ORDER BY sequence`,
    [JSON.stringify(chains)],
  );
  return rows.map(({ body }) => JSON.parse(body) as AnchorBody);
}

async function removeChains(client: pg.Client, chains: readonly HeadRow[]): Promise<number> {
  const { rows } = await client.query<{ entry: string }>(
    `DELETE FROM record_links l USING jsonb_to_recordset($1::jsonb) AS c(kind text, id uuid)
     WHERE c.kind = l.subject_kind AND c.id = l.subject_id RETURNING l.entry_id AS entry`,
    [JSON.stringify(chains)],
  );
  const { rowCount } = await client.query(
    `DELETE FROM record_entries e WHERE e.id = ANY ($1::uuid[])
       AND NOT EXISTS (SELECT 1 FROM record_links l WHERE l.entry_id = e.id)`,
    [rows.map(({ entry }) => entry)],
  );
  return rowCount ?? 0;
}

async function whatIsLeft(
  client: pg.Client,
  { sequence, rows }: AnchorBody,
): Promise<(Digest & { anchor: number; table: string })[]> {
  const left: (Digest & { anchor: number; table: string })[] = [];
  for (const { table, columns } of rows) {
    const lines = new Lines();
    for await (const row of sealedRows(client, table, sequence)) lines.add(rowLine(row, columns));
    left.push({ anchor: sequence, table, ...lines.end() });
  }
  return left;
}
