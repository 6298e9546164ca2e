import type { Operation } from '@hubwright/contracts/operation';
import { pathKeys } from '@hubwright/contracts/operation';
import { allOperations } from '@hubwright/contracts/routes';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { allRounder } from '../support/all-rounder.ts';
import { endpoints } from '../support/described.ts';
import { malformed, type Sending } from '../support/malformed.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { shopHashes } from '../support/shop-hashes.ts';
import { type Received, sendRaw } from '../support/wire.ts';

/** How many requests in all; HUBWRIGHT_MALFORMED=100000 for a long run. */
const wanted = Number(process.env.HUBWRIGHT_MALFORMED ?? 3_000);
/** The stream never ends; the others change the visitor's own session, not the shop. */
const leftOut = new Set(['live', 'sign-out', 'lock-session']);
const tried = endpoints.filter(({ id }) => !leftOut.has(id));
const each = Math.ceil(wanted / tried.length);

/** What an answer never holds: a place in the program, a statement, a library's or the database's own words. */
const inside =
  /\bat .*\.[cm]?[jt]s:\d+|node_modules|\/src\/|\bSELECT\b.*\bFROM\b|\bINSERT INTO\b|prisma|postgres|syntax error at|relation "|invalid input syntax|FST_ERR/i;

/** What would be accepted after all is only tried: the fuzzer looks for crashes, not for changes. */
function wellFormed(operation: Operation, { url, payload, method, headers }: Sending): boolean {
  if (method !== operation.method || !/^application\/json(;|$)/.test(headers['content-type'] ?? '')) return false;
  try {
    const segments = (url.split('?')[0] ?? '').split('/').map(decodeURIComponent);
    const at = operation.path.split('/');
    const path = Object.fromEntries(pathKeys(operation.path).map((key) => [key, segments[at.indexOf(`:${key}`)]]));
    // A reader may skip a byte order mark in front of JSON, and the server's does (RFC 8259, section 8.1).
    const body = (payload ?? '{}').replace(/^\ufeff/, '');
    return operation.input.safeParse({ ...(JSON.parse(body) as object), ...path }).success;
  } catch {
    return false;
  }
}

describe(`${each * tried.length} malformed requests over every endpoint`, () => {
  let shop: ShopApp;
  let visitor: Visitor;
  let before: Record<string, string>;
  let sent = 0;
  const answered = new Map<number, number>();
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    visitor = await allRounder(shop);
    before = await shopHashes(shop.databaseUrl);
  });
  afterAll(() => shop.close());

  function judge(operation: Operation, { status, headers, text }: Received, isDry: boolean): void {
    answered.set(status, (answered.get(status) ?? 0) + 1);
    if (status >= 500 && status !== 503) throw new Error(`answered ${status}: ${text.slice(0, 400)}`);
    if (status >= 400) {
      expect(headers['content-type']).toMatch(/^application\/problem\+json/);
      expect(JSON.parse(text)).toMatchObject({ status, type: expect.stringMatching(/^\/problems\/[a-z-]+$/) });
      expect(text).not.toMatch(inside);
    } else if (operation.kind === 'command') expect({ status, isDry }).toEqual({ status: 200, isDry: true });
  }

  it.each(tried.map((endpoint) => [endpoint.id, endpoint] as const))(
    '%s refuses them without breaking',
    async (id, endpoint) => {
      const operation = allOperations.find((one) => one.id === id) as Operation;
      await fc.assert(
        fc.asyncProperty(malformed(endpoint), async (sending) => {
          const isDry = wellFormed(operation, sending);
          // Sessions and sign-in do not pass the command runner and know no dry run.
          if (operation.path.startsWith('/api/session') && (isDry || sending.method === 'DELETE')) return;
          sent += 1;
          const more = { cookie: visitor.cookie, ...(isDry ? { 'hubwright-dry-run': '1' } : {}) };
          const got = await sendRaw(shop.address, { ...sending, headers: { ...sending.headers, ...more } });
          judge(operation, got, isDry);
        }),
        { numRuns: each },
      );
    },
    60_000 + each * 500,
  );

  it('changed nothing, and the visitor is still signed in', async () => {
    expect(sent).toBeGreaterThan(wanted * 0.95);
    // Were the visitor stopped at the door, nothing behind it would have been tried.
    expect((answered.get(401) ?? 0) / sent).toBeLessThan(0.02);
    expect((answered.get(403) ?? 0) / sent).toBeLessThan(0.1);
    expect((answered.get(422) ?? 0) / sent).toBeGreaterThan(0.2);
    expect((await visitor.send('GET', '/api/session')).status).toBe(200);
    expect(await shopHashes(shop.databaseUrl)).toEqual(before);
  });
});
