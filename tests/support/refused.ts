import type { Operation, Sent } from '@hubwright/contracts/operation';
import { expect } from '@jest/globals';
import type { CallOptions, ShopApp, Visitor } from './shop-app.ts';
import { tableHashes } from './table-hashes.ts';

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
  const before = await tableHashes(shop.databaseUrl);
  const answer = await visitor.call(request.operation, request.input as Sent<O>, request.options);
  const body = answer.body as Record<string, unknown>;
  const pointers = ((body.errors ?? []) as { pointer: string }[]).map(({ pointer }) => pointer);
  expect({ status: answer.status, type: body.type, ...(refusal.pointer ? { pointers } : {}) }).toEqual({
    status: refusal.status,
    type: `/problems/${refusal.type}`,
    ...(refusal.pointer ? { pointers: expect.arrayContaining([refusal.pointer]) } : {}),
  });
  expect(await tableHashes(shop.databaseUrl)).toEqual(before);
  return body;
}
