import { readFile } from 'node:fs/promises';
import { pathKeys } from '@hubwright/contracts/operation';
import { roles } from '@hubwright/contracts/roles';
import { allOperations } from '@hubwright/contracts/routes';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { accessTable } from '../../apps/server/src/platform/http/access-table.ts';
import { openApiDocument } from '../../apps/server/src/platform/http/open-api.ts';
import { personWith, setUp, signedIn } from '../support/builders.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const someId = '0197c0de-0000-7000-8000-000000000000';
/** Streams, and what would end or lock the visitor's own session. */
const leftOut = new Set(['live', 'sign-out', 'sign-in', 'lock-session']);
const tried = allOperations.filter((operation) => !leftOut.has(operation.id));

describe('who may call what', () => {
  let shop: ShopApp;
  const visitors = new Map<string, Visitor>();
  beforeAll(async () => {
    shop = await ShopApp.open('empty');
    await setUp(shop);
    for (const role of roles) visitors.set(role, await signedIn(shop, (await personWith(shop, role)).signInName));
    visitors.set('anyone', shop.visitor());
  });
  afterAll(() => shop.close());

  it.each(tried.map((operation) => [operation.id, operation] as const))(
    '%s answers each role as the contract says',
    async (_, operation) => {
      const path = pathKeys(operation.path).reduce((text, key) => text.replace(`:${key}`, someId), operation.path);
      for (const [role, visitor] of visitors) {
        const answer = await visitor.send(
          operation.method,
          path,
          operation.kind === 'command' ? { body: { nothing: 'of use' } } : {},
        );
        const refusedAtTheDoor =
          answer.body.type === '/problems/not-permitted' || answer.body.type === '/problems/not-signed-in';
        const { access } = operation;
        const allowed =
          access === 'public' ||
          (role !== 'anyone' && (access === 'signed-in' || (access as readonly string[]).includes(role)));
        expect({ operation: operation.id, role, refusedAtTheDoor }).toEqual({
          operation: operation.id,
          role,
          refusedAtTheDoor: !allowed,
        });
        expect(answer.status).toBeLessThan(500);
      }
    },
  );
});

describe('the committed descriptions', () => {
  it('openapi.json is what the contracts say', async () => {
    const committed = await readFile('packages/contracts/openapi.json', 'utf8');
    expect(JSON.parse(committed)).toEqual(JSON.parse(JSON.stringify(openApiDocument(allOperations))));
  });

  it('the access table is what the contracts say', async () => {
    expect(await readFile('tests/security/access-table.md', 'utf8')).toBe(accessTable(allOperations));
  });

  it('every operation has an id, a path and a method of its own', () => {
    const ids = allOperations.map((operation) => operation.id);
    const addresses = allOperations.map(
      (operation) => `${operation.method} ${operation.path.replaceAll(/:\w+/g, ':')}`,
    );
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(addresses).size).toBe(addresses.length);
  });
});
