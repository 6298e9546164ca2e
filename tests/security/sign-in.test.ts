import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { demoPassword, personWith, setUp, signedIn } from '../support/builders.ts';
import { ShopApp } from '../support/shop-app.ts';

describe('signing in', () => {
  let shop: ShopApp;
  let sql: pg.Client;
  beforeAll(async () => {
    shop = await ShopApp.open('empty');
    await setUp(shop);
    await personWith(shop, 'technician', 'bench');
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
  });
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });
  const tryPassword = (signInName: string, password: string, visitor = shop.visitor()) =>
    visitor.call(peopleOperations.signIn, { signInName, password });

  it('answers the same to a wrong name and a wrong password', async () => {
    const wrongName = await tryPassword('nobody-here', demoPassword);
    const wrongPassword = await tryPassword('bench', 'not the right phrase at all');
    expect(wrongName.status).toBe(401);
    expect(wrongPassword.status).toBe(401);
    expect(wrongPassword.body).toEqual(wrongName.body);
  });

  it('gives a new session id, so that one planted before is worth nothing', async () => {
    const visitor = await signedIn(shop, 'bench');
    const before = visitor.cookie;
    await tryPassword('bench', demoPassword, visitor);
    expect(visitor.cookie).not.toBe(before);
    const planted = shop.visitor();
    planted.cookie = before;
    expect((await planted.call(peopleOperations.me, {})).status).toBe(401);
  });

  it('sends the cookie for this site only and never to scripts', async () => {
    const answer = await tryPassword('bench', demoPassword);
    expect(answer.headers['set-cookie']).toMatch(/^hubwright=[^;]+; .*HttpOnly; SameSite=Lax/);
  });

  it('keeps no password in records, receipts or refusals', async () => {
    const { rows } = await sql.query<{ text: string }>(
      `SELECT body AS text FROM record_entries UNION ALL SELECT reply::text FROM receipts UNION ALL SELECT detail || subject::text FROM refusals`,
    );
    expect(rows.length).toBeGreaterThan(1);
    expect(rows.filter((row) => row.text?.includes(demoPassword) || row.text?.includes('2468'))).toEqual([]);
  });

  it('does not write at each read of a session', async () => {
    const visitor = await signedIn(shop, 'bench');
    // A written row is a new row version: xmin names the transaction that wrote it.
    const written = async () => (await sql.query('SELECT sid, xmin::text FROM session ORDER BY sid')).rows;
    await visitor.call(peopleOperations.me, {});
    const before = await written();
    for (let i = 0; i < 5; i += 1) await visitor.call(peopleOperations.me, {});
    expect(await written()).toEqual(before);
  });

  it('ends every session of an account that is turned off', async () => {
    const person = await personWith(shop, 'technician', 'leaving');
    const visitor = await signedIn(shop, 'leaving');
    const administrator = await signedIn(shop, 'first');
    const changed = await administrator.call(
      peopleOperations.changePerson,
      { personId: person.personId, displayName: 'Gone', roles: ['technician'], active: false },
      { version: 2 },
    );
    expect(changed.status).toBe(200);
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(401);
    expect((await tryPassword('leaving', demoPassword)).status).toBe(401);
    expect((await sql.query("SELECT 1 FROM session WHERE sess ->> 'personId' = $1", [person.personId])).rowCount).toBe(
      0,
    );
  });

  it('locks the account and the address after ten wrong passwords until a supervisor unlocks', async () => {
    const person = await personWith(shop, 'technician', 'forgetful');
    await sql.query('DELETE FROM sign_in_attempts');
    for (let i = 0; i < 10; i += 1)
      expect((await tryPassword('forgetful', `wrong phrase number ${i}`)).status).toBe(401);
    const locked = await tryPassword('forgetful', demoPassword);
    expect([locked.status, locked.body.type]).toEqual([429, '/problems/sign-in-locked']);
    expect(Number(locked.headers['retry-after'])).toBeGreaterThan(800);
    // The address is locked too: another account from the same place waits as well.
    expect((await tryPassword('bench', demoPassword)).status).toBe(429);
    await sql.query("DELETE FROM sign_in_attempts WHERE key LIKE 'address:%'");
    const manager = await signedIn(shop, (await personWith(shop, 'manager')).signInName);
    expect((await manager.call(peopleOperations.unlockSignIn, { personId: person.personId })).status).toBe(200);
    expect((await tryPassword('forgetful', demoPassword)).status).toBe(200);
  });

  it('lets at most ten of many parallel guesses through', async () => {
    await personWith(shop, 'technician', 'guessed');
    await sql.query('DELETE FROM sign_in_attempts');
    const answers = await Promise.all(
      Array.from({ length: 25 }, (_, i) => tryPassword('guessed', `parallel guess ${i}`)),
    );
    expect(answers.filter((answer) => answer.status === 401)).toHaveLength(10);
    await sql.query('DELETE FROM sign_in_attempts');
  });

  it('refuses a short or guessable password', async () => {
    const administrator = await signedIn(shop, 'first');
    const add = (password: string) =>
      administrator.call(peopleOperations.addPerson, {
        signInName: 'newcomer',
        displayName: 'N',
        initials: 'N',
        roles: ['technician'],
        password,
      });
    expect((await add('short')).body).toMatchObject({
      type: '/problems/invalid-input',
      errors: [{ pointer: '/password' }],
    });
    expect((await add('newcomer newcomer 1')).body.type).toBe('/problems/weak-password');
    expect((await add('abababababababab')).body.type).toBe('/problems/weak-password');
  });

  it('never leaves the shop without an administrator', async () => {
    const administrator = await signedIn(shop, 'first');
    const me = await administrator.call(peopleOperations.me, {});
    const answer = await administrator.call(
      peopleOperations.changePerson,
      { personId: String(me.body.id), displayName: 'First', roles: ['manager'], active: true },
      { version: 1 },
    );
    expect(answer.body.type).toBe('/problems/last-administrator');
  });
});

describe('requests from elsewhere', () => {
  let shop: ShopApp;
  beforeAll(async () => {
    shop = await ShopApp.open('empty');
    await setUp(shop);
  });
  afterAll(() => shop.close());

  it('refuses a write that another site made the browser send', async () => {
    const visitor = await signedIn(shop, 'first');
    for (const headers of [
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { origin: 'https://elsewhere.example.com' },
      { origin: 'null' },
    ]) {
      const answer = await visitor.call(peopleOperations.signOut, {}, { headers: headers as Record<string, string> });
      expect(answer.body.type).toBe('/problems/cross-site');
    }
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(200);
  });

  it('answers with the headers that keep pages ours', async () => {
    const answer = await shop.visitor().send('GET', '/api/set-up');
    expect(answer.headers['content-security-policy']).toContain("default-src 'none'");
    expect(answer.headers['content-security-policy']).not.toContain('unsafe-inline');
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
    expect(answer.headers['content-security-policy']).toContain("frame-ancestors 'none'");
  });
});
