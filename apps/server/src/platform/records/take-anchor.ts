import pg from 'pg';
import { eachRow } from '../database/each-row.ts';
import { type AnchorBody, type Digest, headLine, Lines, noAnchor, rowLine, signAnchor } from './anchor.ts';
import { columnsOf, plainTexts, sealedRows, sealedTables } from './database-source.ts';
import { introduce, type KeyFolder, makeKey, type ShopKey } from './shop-key.ts';
import type { AnchoredRow, AnchorRow } from './source.ts';

const anchorLock = 4_720_119;

/**
 * Signs where every chain that grew since the last anchor stands now, and what its entries wrote: one moment of the
 * database, one server at a time. Makes the shop's first key when there is none. Undefined when nothing happened since.
 */
export async function takeAnchor(url: string, keys: KeyFolder, at: Date): Promise<AnchorRow | undefined> {
  return alone(url, async (client) => {
    const key = await currentKey(client, keys, at);
    const { rows } = await client.query<{ sequence: number; hash: string }>(
      'SELECT sequence, hash FROM anchors ORDER BY sequence DESC LIMIT 1',
    );
    const sequence = (rows[0]?.sequence ?? 0) + 1;
    const heads = await addGrownChains(client, sequence);
    if (heads.count === 0) return undefined;
    const sealed: AnchorBody['rows'][number][] = [];
    for (const table of await sealedTables(client)) sealed.push(await sealTable(client, table, sequence));
    const anchor = signAnchor(
      {
        kind: 'anchor',
        sequence,
        at: at.toISOString(),
        previous: rows[0]?.hash ?? noAnchor,
        key: key.id,
        heads,
        rows: sealed,
      },
      key,
    );
    await client.query(
      'INSERT INTO anchors (sequence, at, body, hash, key_id, signature) VALUES ($1, $2, $3, $4, $5, $6)',
      [sequence, at, anchor.body, anchor.hash, anchor.keyId, anchor.signature],
    );
    return anchor;
  });
}

/** The key that signs now. One whose file is gone (a restore without keys) is followed by a new one that it did not sign. */
async function currentKey(client: pg.Client, keys: KeyFolder, at: Date): Promise<ShopKey> {
  const { rows } = await client.query<{ id: string }>('SELECT id FROM shop_keys ORDER BY sequence DESC LIMIT 1');
  const found = rows[0] && (await keys.find(rows[0].id));
  if (found) return found;
  const made = makeKey();
  await keys.keep(made);
  const row = introduce(made, at.toISOString());
  await client.query('INSERT INTO shop_keys (id, at, statement, signature) VALUES ($1, $2, $3, $4)', [
    row.id,
    at,
    row.statement,
    row.signature,
  ]);
  return made;
}

async function addGrownChains(client: pg.Client, sequence: number): Promise<Digest> {
  await client.query(
    `INSERT INTO anchored_heads (anchor, subject_kind, subject_id, after, sequence, hash)
     SELECT $1, h.subject_kind, h.subject_id, coalesce(seen.sequence, 0), h.sequence, h.hash FROM record_heads h
     LEFT JOIN LATERAL (
       SELECT a.sequence FROM anchored_heads a WHERE a.subject_kind = h.subject_kind AND a.subject_id = h.subject_id
       ORDER BY a.sequence DESC LIMIT 1
     ) seen ON true
     WHERE h.sequence > coalesce(seen.sequence, 0)`,
    [sequence],
  );
  const lines = new Lines();
  const added = eachRow<AnchoredRow>(
    client,
    `SELECT subject_kind AS kind, subject_id AS id, after, sequence, hash FROM anchored_heads
     WHERE anchor = ${sequence} ORDER BY subject_kind COLLATE "C", subject_id, sequence`,
  );
  for await (const head of added) lines.add(headLine(head));
  return lines.end();
}

async function sealTable(client: pg.Client, table: string, sequence: number): Promise<AnchorBody['rows'][number]> {
  const columns = await columnsOf(client, table);
  const lines = new Lines();
  for await (const row of sealedRows(client, table, sequence)) lines.add(rowLine(row, columns));
  return { table, columns, ...lines.end() };
}

/** One transaction over one moment. The lock comes before it: a snapshot taken while waiting would be an old one. */
async function alone<T>(url: string, use: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query('SELECT pg_advisory_lock($1)', [anchorLock]);
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ');
    await client.query(plainTexts);
    const answer = await use(client);
    await client.query('COMMIT');
    return answer;
  } finally {
    await client.end();
  }
}
