import { randomBytes, randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import http from 'node:http';
import pg from 'pg';
import type { Statement } from './statements.ts';

// The bare twin: node:http and pg, sending the very statements the server sends for the same request, session read included,
// and nothing else: no routing, no schemas, no roles. Started by run.ts with the statements it noted.
interface TwinPlan {
  readonly url: string;
  readonly reads: Record<string, readonly Statement[]>;
  /** The command's transaction, from BEGIN to COMMIT, and what comes before it. */
  readonly write: { before: readonly Statement[]; transaction: readonly Statement[] };
  /** Texts in the noted values that must be new in each replay. */
  readonly fresh: readonly string[];
}

const plan = JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')) as TwinPlan;
const pool = new pg.Pool({ connectionString: plan.url, max: 20 });

async function read(statements: readonly Statement[]): Promise<unknown> {
  let rows: unknown[] = [];
  for (const statement of statements) rows = (await pool.query(statement.text, [...statement.values])).rows;
  return { rows };
}

/** The noted transaction with new ids and the chain's next number: what a hand-written transaction would have to do. */
async function write(lot: { noted: string; now: string }): Promise<unknown> {
  for (const statement of plan.write.before) await pool.query(statement.text, [...statement.values]);
  const made = new Map([...plan.fresh.map((text) => [text, randomUUID()] as const), [lot.noted, lot.now] as const]);
  const replaced = (value: unknown): unknown => {
    if (typeof value === 'string') {
      let text = value;
      for (const [noted, now] of made) text = text.replaceAll(noted, now);
      return text;
    }
    return Array.isArray(value) ? value.map(replaced) : value;
  };
  const client = await pool.connect();
  try {
    let heads: { kind: string; id: string; sequence: number; hash: string }[] = [];
    for (const { text, values } of plan.write.transaction) {
      const sent = values.map((value) => nextLinks(replaced(value), heads));
      const { rows } = await client.query(text, sent);
      if (text.includes('INTO record_heads')) heads = rows.map(rowObject);
    }
    return { ok: true };
  } catch (error) {
    await client.query('ROLLBACK');
    throw error;
  } finally {
    client.release();
  }
}

function rowObject(row: unknown) {
  const [kind, id, sequence, hash] = Array.isArray(row) ? row : Object.values(row as object);
  return { kind, id, sequence: Number(sequence), hash };
}

/** The value that holds the new links gets the sequence after the head's. */
function nextLinks(value: unknown, heads: readonly { sequence: number; hash: string }[]): unknown {
  if (typeof value !== 'string' || !value.startsWith('[{') || !value.includes('"previous"')) return value;
  const links = JSON.parse(value) as object[];
  const hash = randomBytes(32).toString('hex');
  return JSON.stringify(
    links.map((link, at) => ({ ...link, sequence: (heads[at]?.sequence ?? 0) + 1, previous: heads[at]?.hash, hash })),
  );
}

const server = http.createServer((request, response) => {
  const url = new URL(request.url ?? '/', 'http://twin');
  let body = '';
  request.on('data', (chunk) => {
    body += chunk;
  });
  request.on('end', async () => {
    try {
      const statements = plan.reads[url.pathname];
      const reply = statements ? await read(statements) : await write(JSON.parse(body));
      response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(reply));
    } catch (error) {
      response.writeHead(500).end(String(error));
    }
  });
});
server.listen(0, '127.0.0.1', () => process.send?.({ port: (server.address() as { port: number }).port }));
