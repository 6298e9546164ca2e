import type { Operation } from '@hubwright/contracts/operation';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { allOperations } from '@hubwright/contracts/routes';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { allRounder } from '../support/all-rounder.ts';
import { demoPassword } from '../support/builders.ts';
import { addressOf, type Endpoint, endpoints, resolved, type Schema } from '../support/described.ts';
import { as } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { shopHashes } from '../support/shop-hashes.ts';
import { sendRaw } from '../support/wire.ts';

const someId = '0197c0de-0000-7000-8000-000000000000';
const median = (values: number[]) => [...values].sort((a, b) => a - b)[values.length >> 1] ?? 0;
const operationOf = ({ id }: Endpoint) => allOperations.find((one) => one.id === id) as Operation;
const filled = (endpoint: Endpoint) =>
  addressOf(endpoint, Object.fromEntries(Object.keys(endpoint.inPath).map((name) => [name, someId])));
const writes = endpoints.filter(({ method, id }) => method !== 'GET' && id !== 'sign-out');

describe('who tries to get in', () => {
  let shop: ShopApp;
  let sql: pg.Client;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
  });
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });
  const enter = (signInName: string, password: string, visitor: Visitor = shop.visitor()) =>
    visitor.call(peopleOperations.signIn, { signInName, password });

  it('learns no name from an answer, nor from how long it takes', async () => {
    const took = { known: [] as number[], unknown: [] as number[] };
    const bodies = new Set<string>();
    for (let round = 0; round < 20; round += 1) {
      for (const [which, name] of [
        ['known', 'tech'],
        ['unknown', `stranger-${round}`],
      ] as const) {
        await sql.query('DELETE FROM sign_in_attempts');
        const began = performance.now();
        const answer = await enter(name, 'not the phrase of this person');
        took[which].push(performance.now() - began);
        bodies.add(JSON.stringify([answer.status, answer.body]));
      }
    }
    expect(bodies.size).toBe(1);
    // One Argon2id hash each; without one for strangers they would be told apart by a factor of ten or more.
    const ratio = median(took.known) / median(took.unknown);
    expect(ratio).toBeGreaterThan(0.5);
    expect(ratio).toBeLessThan(2);
  }, 60_000);

  it('learns none from the lock either: a name nobody has is locked as well', async () => {
    await sql.query('DELETE FROM sign_in_attempts');
    for (let round = 0; round < 10; round += 1) await enter('nobody-at-all', `wrong phrase number ${round}`);
    await sql.query("DELETE FROM sign_in_attempts WHERE key LIKE 'address:%'");
    expect((await enter('nobody-at-all', demoPassword)).body.type).toBe('/problems/sign-in-locked');
    await sql.query('DELETE FROM sign_in_attempts');
  }, 60_000);

  it('finds no account that came with the program', async () => {
    for (const [name, password] of [
      ['admin', 'admin'],
      ['admin', 'password'],
      ['root', 'root'],
      ['hubwright', 'hubwright'],
    ] as const)
      expect((await enter(name, password)).status).toBe(401);
    await sql.query('DELETE FROM sign_in_attempts');
  }, 60_000);

  it('cannot plant a session: an id the server did not give, or gave before sign-in, is worth nothing', async () => {
    for (const planted of ['hubwright=planted-by-someone', `hubwright=${'a'.repeat(32)}.${'b'.repeat(43)}`]) {
      const visitor = shop.visitor();
      visitor.cookie = planted;
      await enter('tech', demoPassword, visitor);
      expect(visitor.cookie).not.toContain(planted.slice(10, 30));
      const other = shop.visitor();
      other.cookie = planted;
      expect((await other.call(peopleOperations.me, {})).status).toBe(401);
    }
  });

  it('cannot guess a session: its id has at least 128 bits and is signed', async () => {
    const visitor = await as(shop, 'technician');
    const [id = '', signature = ''] = decodeURIComponent(/hubwright=([^;]+)/.exec(visitor.cookie)?.[1] ?? '').split(
      '.',
    );
    expect((id.length * 6) / 128).toBeGreaterThanOrEqual(1);
    expect(signature.length).toBeGreaterThan(40);
    visitor.cookie = `hubwright=${id}.${signature.slice(0, -1)}x`;
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(401);
  });

  it('cannot go on after signing out, with the cookie kept aside', async () => {
    const visitor = await as(shop, 'technician');
    const kept = visitor.cookie;
    expect((await visitor.call(peopleOperations.signOut, {})).status).toBe(200);
    visitor.cookie = kept;
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(401);
  });

  it('nothing but a session in a cookie opens: no key in the address, in a header, or as basic authentication', async () => {
    const basic = Buffer.from(`tech:${demoPassword}`).toString('base64');
    const visitor = shop.visitor();
    for (const headers of [
      { authorization: `Basic ${basic}` },
      { authorization: 'Bearer hubwright' },
      { 'x-user': 'tech', 'x-forwarded-user': 'tech', 'x-remote-user': 'tech' },
    ])
      expect((await visitor.send('GET', '/api/customers', { headers })).status).toBe(401);
    for (const query of ['hubwright=x', 'session=x', 'token=x', 'personId=x'])
      expect((await visitor.send('GET', `/api/customers?${query}`)).status).toBe(401);
  });
});

describe('writes that were not meant', () => {
  let shop: ShopApp;
  let visitor: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    visitor = await allRounder(shop);
  });
  afterAll(() => shop.close());

  it.each(writes.map((endpoint) => [endpoint.id, endpoint] as const))(
    '%s does not believe another site, nor a form',
    async (_, endpoint) => {
      const send = (headers: Record<string, string>, payload = '{}') =>
        sendRaw(shop.address, {
          method: endpoint.method,
          url: filled(endpoint),
          payload,
          headers: {
            cookie: visitor.cookie,
            'content-type': 'application/json',
            'idempotency-key': 'cross-site-key',
            'if-match': '"1"',
            ...headers,
          },
        });
      for (const headers of [
        { 'sec-fetch-site': 'cross-site' },
        { 'sec-fetch-site': 'same-site' },
        { origin: 'https://elsewhere.example.com' },
        { origin: 'null' },
      ] as Record<string, string>[])
        expect(JSON.parse((await send(headers)).text).type).toBe('/problems/cross-site');
      // What a form can send without asking first (Fetch, CORS-safelisted content types) is never read as JSON.
      for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'])
        expect((await send({ 'content-type': type }, '{"a":1}')).status).toBe(415);
    },
  );

  it('no read changes anything', async () => {
    const before = await shopHashes(shop.databaseUrl);
    for (const endpoint of endpoints.filter(({ method, id }) => method === 'GET' && id !== 'live'))
      for (const method of ['GET', 'HEAD'])
        await sendRaw(shop.address, { method, url: filled(endpoint), headers: { cookie: visitor.cookie } });
    expect(await shopHashes(shop.databaseUrl)).toEqual(before);
  }, 60_000);
});

/** Fields a stranger might hope are bound without being asked for. */
const hoped = {
  id: someId,
  role: 'administrator',
  isAdmin: true,
  personId: someId,
  signedBy: someId,
  approvedAt: '2026-01-01T00:00:00Z',
  approvedBy: someId,
  createdAt: '2026-01-01T00:00:00Z',
  price: '0.01',
  unitPrice: '0.01',
  passwordHash: 'x',
  entryId: someId,
  actor: { roles: ['administrator'] },
  presigned: true,
  __typename: 'x',
};

/** Every object inside a schema that takes fields it does not name. */
function loose(given: Schema, at: string): string[] {
  const schema = resolved(given);
  const inner = [
    ...Object.entries((schema.properties ?? {}) as Record<string, Schema>).map(([key, one]) => [`${at}/${key}`, one]),
    ...((schema.anyOf ?? []) as Schema[]).map((one, index) => [`${at}|${index}`, one]),
    ...(schema.items ? [[`${at}/*`, schema.items]] : []),
  ] as [string, Schema][];
  const isLoose = schema.type === 'object' && schema.properties !== undefined && schema.additionalProperties !== false;
  return [...(isLoose ? [at] : []), ...inner.flatMap(([place, one]) => loose(one, place))];
}

describe('fields nobody asked for', () => {
  let shop: ShopApp;
  let visitor: Visitor;
  let before: Record<string, string>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    visitor = await allRounder(shop);
    before = await shopHashes(shop.databaseUrl);
  });
  afterAll(() => shop.close());

  // A file's body has no fields.
  it.each(
    writes
      .filter((endpoint) => endpoint.id !== 'sign-in' && operationOf(endpoint).takes === undefined)
      .map((endpoint) => [endpoint.id, endpoint] as const),
  )('%s refuses them by name', async (_, endpoint) => {
    const known = Object.keys(operationOf(endpoint).input.shape);
    const extra = Object.fromEntries(Object.entries(hoped).filter(([key]) => !known.includes(key)));
    const answer = await visitor.send(endpoint.method, filled(endpoint), { body: extra, version: 1 });
    expect(answer.status).toBe(422);
    const pointers = (answer.body.errors as { pointer: string }[]).map(({ pointer }) => pointer);
    expect(pointers).toEqual(expect.arrayContaining(Object.keys(extra).map((key) => `/${key}`)));
  });

  it('nor are they taken deeper inside any body', () => {
    const found = endpoints.flatMap(({ id, body }) => (body ? loose(body, id) : []));
    expect(found).toEqual([]);
  });

  it('and nothing was changed', async () => {
    expect(await shopHashes(shop.databaseUrl)).toEqual(before);
  });

  it.each(['{"__proto__":{"roles":["administrator"]}}', '{"constructor":{"prototype":{"polluted":true}}}'])(
    'the body %s is refused and reaches no other object',
    async (payload) => {
      const answer = await visitor.send('POST', '/api/bins', { payload });
      expect([400, 422]).toContain(answer.status);
      expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
      expect(({} as { roles?: string[] }).roles).toBeUndefined();
    },
  );

  it('of a name given twice only the last is read, by the check and by the command alike', async () => {
    const twice = '{"code":"Z-1","walk":1,"walk":-1e9}';
    const answer = await visitor.send('POST', '/api/bins', { payload: twice });
    expect(answer.status).toBe(422);
  });

  it('a query value given twice is refused, not guessed', async () => {
    expect((await visitor.send('GET', '/api/customers?limit=1&limit=2')).status).toBe(422);
  });

  it('lists are never longer than 200 rows, whatever is asked for', async () => {
    const lists = endpoints.filter(({ inQuery }) => 'limit' in inQuery);
    expect(lists.length).toBeGreaterThan(10);
    for (const list of lists)
      for (const limit of ['1000000000', '201', '0', '-1', '1e9', 'Infinity']) {
        const answer = await visitor.send('GET', `${filled(list)}?limit=${limit}`);
        expect({ list: list.id, limit, status: answer.status }).toEqual({ list: list.id, limit, status: 422 });
      }
  });

  it('a body of ten megabytes is refused before it is read', async () => {
    const answer = await visitor.send('POST', '/api/bins', { payload: `{"code":"${'x'.repeat(10_000_000)}"}` });
    expect([answer.status, answer.body.type]).toEqual([413, '/problems/too-large']);
  });

  it.each(['1e309', '-1e309', '1e9', '-1', '0.5', '9007199254740993', '"1"', 'null', '[1]'])(
    'the number %s is refused where a small whole one is meant',
    async (number) => {
      const answer = await visitor.send('POST', '/api/bins', { payload: `{"code":"Z-1","walk":${number}}` });
      expect([answer.status, (answer.body.errors as { pointer: string }[])[0]?.pointer]).toEqual([422, '/walk']);
    },
  );
});
