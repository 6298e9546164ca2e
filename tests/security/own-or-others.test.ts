import { peopleOperations } from '@hubwright/contracts/people/operations';
import { allOperations } from '@hubwright/contracts/routes';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import pg from 'pg';
import { allRounder } from '../support/all-rounder.ts';
import { demoPassword, newPerson } from '../support/builders.ts';
import { addressOf, endpoints, fitting } from '../support/described.ts';
import { as } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';
import { shopHashes } from '../support/shop-hashes.ts';

const signed = endpoints.filter(({ id }) => allOperations.find((one) => one.id === id)?.signs !== undefined);
const ownSession = endpoints.filter(({ path }) => /^\/api\/session(\/|$)/.test(path));
const someId = '0197c0de-0000-7000-8000-000000000000';
const neighbour = { password: 'reeds beside the long canal', pin: '731946' };

// The last column of the access table, row by row. Inspecting one's own work is tried where the work is:
// tests/flows/release.test.ts and tests/flows/bad-input.test.ts.
describe('what hangs on whose it is', () => {
  let shop: ShopApp;
  let visitor: Visitor;
  let sql: pg.Client;
  let before: Record<string, string>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    visitor = await allRounder(shop);
    const person = {
      signInName: 'neighbour',
      displayName: 'Reed Neighbour',
      initials: 'RN',
      roles: ['inspector' as const],
    };
    await newPerson(shop, person, neighbour);
    before = await shopHashes(shop.databaseUrl);
  });
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });

  it.each(signed.map((endpoint) => [endpoint.id, endpoint] as const))(
    '%s takes nobody else’s PIN or password',
    async (_, endpoint) => {
      await sql.query('DELETE FROM sign_in_attempts');
      const url = addressOf(endpoint, Object.fromEntries(Object.keys(endpoint.inPath).map((name) => [name, someId])));
      for (const signature of [{ pin: neighbour.pin }, { password: neighbour.password }]) {
        const types = new Set<unknown>();
        for (let seed = 0; seed < 40 && !types.has('/problems/signature-refused'); seed += 1) {
          const body = { ...(fc.sample(fitting(endpoint.body ?? {}), { numRuns: 1, seed })[0] as object), signature };
          types.add((await visitor.send(endpoint.method, url, { body, version: 1 })).body.type);
        }
        // A body may be refused for itself first, until one is not.
        expect([...types].filter((type) => type !== '/problems/invalid-input')).toEqual([
          '/problems/signature-refused',
        ]);
      }
    },
  );

  it('none of them changed anything', async () => {
    expect(await shopHashes(shop.databaseUrl)).toEqual(before);
  });

  it('what is about the own session lets nobody name a person', () => {
    expect(ownSession.length).toBeGreaterThanOrEqual(3);
    const naming = ownSession.flatMap(({ id, inPath, inQuery, body }) =>
      [inPath, inQuery, (body?.properties ?? {}) as object].flatMap((place) =>
        Object.keys(place)
          .filter((name) => /person/i.test(name))
          .map((name) => `${id} ${name}`),
      ),
    );
    expect(naming).toEqual([]);
  });

  it('me is the person of the session, and signing out ends that session alone', async () => {
    const [desk, again, parts] = [
      await as(shop, 'front-desk'),
      await as(shop, 'front-desk'),
      await as(shop, 'parts-room'),
    ];
    const [mine, theirs] = [await desk.call(peopleOperations.me, {}), await parts.call(peopleOperations.me, {})];
    expect(mine.body.roles).toEqual(['front-desk']);
    expect(theirs.body.roles).toEqual(['parts-room']);
    expect((await desk.send('GET', `/api/session?personId=${String(theirs.body.id)}`)).status).toBe(422);
    expect((await desk.call(peopleOperations.signOut, {})).status).toBe(200);
    expect((await desk.call(peopleOperations.me, {})).status).toBe(401);
    expect((await again.call(peopleOperations.me, {})).status).toBe(200);
    expect((await parts.call(peopleOperations.me, {})).status).toBe(200);
  });

  it('a receipt is its person’s own: another’s key with the same words does not replay what they did', async () => {
    const desk = await as(shop, 'manager');
    const bin = { code: 'K-77', title: 'by the door', walk: 77 };
    const first = await desk.send('POST', '/api/bins', { body: bin, key: 'one-key-for-two' });
    expect(first.status).toBe(200);
    expect((await desk.send('POST', '/api/bins', { body: bin, key: 'one-key-for-two' })).body).toEqual(first.body);
    const other = await visitor.send('POST', '/api/bins', { body: bin, key: 'one-key-for-two' });
    expect(other.body.type).toBe('/problems/already-exists');
  });

  it('the neighbour’s own password and PIN are right: the refusals above are about whose they are', async () => {
    await sql.query('DELETE FROM sign_in_attempts');
    const answer = await shop.visitor().call(peopleOperations.signIn, {
      signInName: 'neighbour',
      password: neighbour.password,
    });
    expect(answer.status).toBe(200);
    expect(neighbour.password).not.toBe(demoPassword);
  });
});
