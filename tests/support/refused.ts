import type { Operation, Sent } from '@hubwright/contracts/operation';
import { expect } from '@jest/globals';
import pg from 'pg';
import type { Answer, CallOptions, ShopApp, Visitor } from './shop-app.ts';

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
  const send = () => visitor.call(request.operation, request.input as Sent<O>, request.options);
  return (await expectUnchanged(shop, send, refusal)).body;
}

/** Sends whatever it is, sees that it is refused as said and that no table changed. Answers the answer. */
export async function expectUnchanged(shop: ShopApp, send: () => Promise<Answer>, refusal: Refusal): Promise<Answer> {
  const before = await tableHashes(shop.databaseUrl);
  const answer = await send();
  const pointers = ((answer.body.errors ?? []) as { pointer: string }[]).map(({ pointer }) => pointer);
  expect({ status: answer.status, type: answer.body.type, ...(refusal.pointer ? { pointers } : {}) }).toEqual({
    status: refusal.status,
    type: `/problems/${refusal.type}`,
    ...(refusal.pointer ? { pointers: expect.arrayContaining([refusal.pointer]) } : {}),
  });
  expect(await tableHashes(shop.databaseUrl)).toEqual(before);
  return answer;
}

/**
 * A hash of every row of every table but some: equal hashes mean nothing was changed. A refusal is written to `refusals`, a
 * session is kept alive once a minute by whatever is asked, tries at a secret are counted and forgotten, kept due dates follow
 * earlier writes by themselves, and every ten minutes an anchor is taken of what was written before.
 */
export async function tableHashes(databaseUrl: string): Promise<Record<string, string>> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ name: string }>(
      "SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename NOT IN ('refusals', 'session', 'sign_in_attempts', 'unit_due', 'due_state', 'shop_keys', 'anchors', 'anchored_heads') ORDER BY 1",
    );
    const hashes: Record<string, string> = {};
    for (const { name } of rows) {
      const result = await client.query<{ hash: string }>(
        `SELECT md5(coalesce(string_agg(r::text, '|' ORDER BY r::text), '')) AS hash FROM ${client.escapeIdentifier(name)} r`,
      );
      hashes[name] = result.rows[0]?.hash ?? '';
    }
    return hashes;
  } finally {
    await client.end();
  }
}
