import type { Operation, Sent } from '@hubwright/contracts/operation';
import { expect } from '@jest/globals';
import pg from 'pg';
import type { CallOptions, ShopApp, Visitor } from './shop-app.ts';

/** Tables that a refused request may write: the refusal itself, and what keeps people signed in. */
const aside = ['refusals', 'session', 'sign_in_attempts', '_prisma_migrations'];

/** One hash over every row of every other table. */
export async function hashOfTables(shop: ShopApp): Promise<string> {
  const client = new pg.Client({ connectionString: shop.databaseUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> ALL($1) ORDER BY 1`,
      [aside],
    );
    const each = rows.map(
      ({ name }) =>
        `SELECT '${name}' AS name, md5(coalesce(string_agg(t::text, '|' ORDER BY t::text), '')) AS hash FROM "${name}" t`,
    );
    const hashes = await client.query<{ hash: string }>(
      `SELECT md5(string_agg(name || hash, ',' ORDER BY name)) AS hash FROM (${each.join(' UNION ALL ')}) AS every`,
    );
    return hashes.rows[0]?.hash ?? '';
  } finally {
    await client.end();
  }
}

export interface Refusal {
  readonly status: number;
  readonly type: string;
  /** Where in the input the fault lies, as a JSON pointer. */
  readonly pointer?: string;
}

/** Sends a request that must be refused as said, and sees that no table changed. Answers the problem. */
export async function expectRefused<O extends Operation>(
  { shop, visitor }: { shop: ShopApp; visitor: Visitor },
  request: { operation: O; input: Sent<O> | Record<string, unknown>; options?: CallOptions },
  refusal: Refusal,
): Promise<Record<string, unknown>> {
  const before = await hashOfTables(shop);
  const answer = await visitor.call(request.operation, request.input as Sent<O>, request.options);
  const body = answer.body as Record<string, unknown>;
  const pointers = ((body.errors ?? []) as { pointer: string }[]).map(({ pointer }) => pointer);
  expect({ status: answer.status, type: body.type, ...(refusal.pointer ? { pointers } : {}) }).toEqual({
    status: refusal.status,
    type: `/problems/${refusal.type}`,
    ...(refusal.pointer ? { pointers: expect.arrayContaining([refusal.pointer]) } : {}),
  });
  expect(await hashOfTables(shop)).toBe(before);
  return body;
}
