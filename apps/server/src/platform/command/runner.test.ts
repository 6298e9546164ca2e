import { randomUUID } from 'node:crypto';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { Problem } from '@hubwright/contracts/problems';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { personWith, setUp, signedIn, smallestShop } from '../../../../../tests/support/builders.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { asServer } from '../database/server-role.ts';
import { verifyDatabase } from '../records/verify-database.ts';
import { defineCommand } from './command.ts';

const { shop: profile } = smallestShop;
/** Waits in its transaction, so that a twin meets it running. */
const slowly = (milliseconds: number) =>
  defineCommand(peopleOperations.changeShop, {
    locks: () => ['shop'],
    async execute({ tx }) {
      await tx.$executeRaw`SELECT pg_sleep(${milliseconds / 1000})`;
      return { reply: { version: 99 }, subjects: [{ kind: 'shop', id: randomUUID() }] };
    },
  });

describe('the one write path', () => {
  let shop: ShopApp;
  let sql: pg.Client;
  let administrator: Visitor;
  let actor: Awaited<ReturnType<typeof personWith>>;
  beforeAll(async () => {
    shop = await ShopApp.open('empty');
    await setUp(shop);
    actor = await personWith(shop, 'administrator');
    administrator = await signedIn(shop, 'first');
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
  });
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });
  const count = async (table: string) => Number((await sql.query(`SELECT count(*) AS n FROM ${table}`)).rows[0].n);
  const version = async () => Number((await sql.query('SELECT version FROM shop_profile')).rows[0].version);
  const change = async (name: string, options = {}) =>
    administrator.call(peopleOperations.changeShop, { ...profile, name }, { version: await version(), ...options });

  it('answers a replay with the stored reply and writes once', async () => {
    const key = randomUUID();
    const seen = await version();
    const first = await change('Once', { key, version: seen });
    const entries = await count('record_entries');
    const again = await change('Once', { key, version: seen });
    expect([again.status, again.body]).toEqual([200, first.body]);
    expect(await count('record_entries')).toBe(entries);
  });

  it('refuses a key that was used for something else', async () => {
    const key = randomUUID();
    await change('This', { key });
    expect((await change('That', { key })).body).toMatchObject({ status: 422, type: '/problems/key-reused' });
  });

  it('says still-running while the twin has not finished', async () => {
    const key = randomUUID();
    const input = { ...profile };
    const run = () => shop.run(slowly(400), input, actor, { key, version: 1 });
    const outcomes = await Promise.allSettled([run(), run()]);
    const refused = outcomes
      .filter((outcome) => outcome.status === 'rejected')
      .map((outcome) => (outcome.reason as Problem).type);
    expect(refused).toEqual(['still-running']);
  });

  it('asks for a key, a version, and the right version', async () => {
    const noKey = await administrator.send('PUT', '/api/shop', {
      body: profile,
      headers: { 'idempotency-key': '' },
      version: 1,
    });
    expect([noKey.status, noKey.body.type]).toEqual([400, '/problems/key-missing']);
    const noVersion = await administrator.send('PUT', '/api/shop', { body: profile });
    expect([noVersion.status, noVersion.body.type]).toEqual([428, '/problems/version-missing']);
    const current = await version();
    const stale = await change('Stale', { version: current - 1 });
    expect(stale.body).toMatchObject({ status: 412, type: '/problems/out-of-date', version: current });
  });

  it('does all but commit on a dry run', async () => {
    const before = [await count('record_entries'), await count('receipts'), await version()];
    const dry = await change('Never', { dryRun: true });
    expect(dry.body).toEqual({ version: (before[2] ?? 0) + 1 });
    expect([await count('record_entries'), await count('receipts'), await version()]).toEqual(before);
  });

  it('changes nothing when the body fails halfway', async () => {
    const failing = defineCommand(peopleOperations.changeShop, {
      locks: () => ['shop'],
      async execute({ tx }) {
        await tx.shopProfile.update({ where: { id: 1 }, data: { name: 'Half done' } });
        throw new Problem('not-enough', 'stopped on purpose');
      },
    });
    await expect(shop.run(failing, { ...profile }, actor, { version: 1 })).rejects.toMatchObject({
      type: 'not-enough',
    });
    expect((await sql.query('SELECT name FROM shop_profile')).rows[0].name).not.toBe('Half done');
    const kept = await sql.query("SELECT command FROM refusals WHERE problem = 'not-enough'");
    expect(kept.rows).toEqual([{ command: 'change-shop' }]);
  });

  it('points at each wrong field', async () => {
    const answer = await administrator.send('PUT', '/api/shop', {
      body: { ...profile, currency: 'dollars', colour: 'red' },
      version: 1,
    });
    expect(answer.status).toBe(422);
    expect((answer.body.errors as { pointer: string }[]).map((error) => error.pointer).sort()).toEqual([
      '/colour',
      '/currency',
    ]);
  });

  it.each([
    ['broken JSON', { payload: '{"name":' }, 400, '/problems/malformed-request'],
    ['a list', { payload: '[]' }, 400, '/problems/malformed-request'],
    ['ten megabytes', { payload: JSON.stringify({ name: 'x'.repeat(10_000_000) }) }, 413, '/problems/too-large'],
    [
      'a form',
      { payload: 'name=x', headers: { 'content-type': 'application/x-www-form-urlencoded' } },
      415,
      '/problems/wrong-type',
    ],
  ])('answers %s with a problem', async (_, request, status, type) => {
    const answer = await administrator.send('PUT', '/api/shop', { ...request, version: 1 });
    expect([answer.status, answer.body.type]).toEqual([status, type]);
  });

  it('runs 40 commands at once on one thing without losing one, and every chain verifies', async () => {
    const before = await version();
    const bump = defineCommand(peopleOperations.changeShop, {
      locks: () => ['shop'],
      async execute({ tx }) {
        const { version: seen } = await tx.shopProfile.findUniqueOrThrow({ where: { id: 1 } });
        await tx.shopProfile.update({ where: { id: 1 }, data: { version: seen + 1 } });
        return {
          reply: { version: seen + 1 },
          subjects: [{ kind: 'shop', id: '0197c0de-0000-7000-8000-000000000001' }],
        };
      },
    });
    const replies = await Promise.all(
      Array.from({ length: 40 }, () => shop.run(bump, { ...profile }, actor, { version: 1 })),
    );
    expect(new Set(replies.map((reply) => reply.version)).size).toBe(40);
    expect(await version()).toBe(before + 40);
    const report = await verifyDatabase(shop.databaseUrl);
    expect(report.faults).toEqual([]);
    expect(report.links).toBeGreaterThan(40);
  });

  it('asks for the signature again where the operation signs', async () => {
    const signing = { ...peopleOperations.changeShop, signs: 'I looked', secret: ['signature'] };
    const body = defineCommand(signing, {
      locks: () => [],
      execute: async () => ({ reply: { version: 1 }, subjects: [{ kind: 'shop', id: randomUUID() }] }),
    });
    const call = (signature: object) =>
      shop.running.runner.run(body, { input: { ...profile, signature }, actor, key: randomUUID(), expectedVersion: 1 });
    // The operation's own schema is strict: a signature it did not ask for is refused before anything else.
    await expect(call({ pin: '2468' })).rejects.toMatchObject({ type: 'invalid-input' });
  });
});

describe('records and movements', () => {
  let shop: ShopApp;
  beforeAll(async () => {
    shop = await ShopApp.open('empty');
    await setUp(shop);
  });
  afterAll(() => shop.close());

  const appendOnly = ['movements', 'record_entries', 'record_links', 'sign_offs', 'measurements', 'releases'];
  const attempts = appendOnly.flatMap((table) => [
    [table, `UPDATE ${table} SET id = id`],
    [table, `DELETE FROM ${table}`],
    [table, `TRUNCATE ${table} CASCADE`],
  ]);

  it.each(attempts)('%s refuses "%s" to the server itself', async (_, statement) => {
    const client = new pg.Client({ connectionString: asServer(shop.databaseUrl) });
    await client.connect();
    expect((await client.query('SELECT current_user AS name')).rows[0].name).toBe('hubwright_server');
    await expect(
      client.query(statement.replace('record_links SET id = id', 'record_links SET hash = hash')),
    ).rejects.toMatchObject({ code: '42501' });
    await client.end();
  });

  it.each(attempts)('%s refuses "%s" even to the owner of the tables', async (_, statement) => {
    const client = new pg.Client({ connectionString: shop.databaseUrl });
    await client.connect();
    await expect(
      client.query(statement.replace('record_links SET id = id', 'record_links SET hash = hash')),
    ).rejects.toThrow(/only added/i);
    await client.end();
  });
});
