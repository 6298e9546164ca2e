import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { issueBadge } from '../../apps/server/src/modules/people/issue-badge.command.ts';
import { demoPassword, personWith, setUp } from '../support/builders.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const hour = 3600;
const pin = '2468';

describe('a shared tablet', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let sql: pg.Client;
  const badges: Record<string, string> = {};
  const ids: Record<string, string> = {};
  let tablet: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('empty', { clock });
    await setUp(shop);
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    const admin = await personWith(shop, 'administrator', 'keeper');
    for (const name of ['ada', 'bea', 'cato']) {
      const { personId } = await personWith(shop, 'technician', name);
      await shop.run(issueBadge, { personId }, admin);
      const { rows } = await sql.query('SELECT code FROM badges WHERE person_id = $1', [personId]);
      badges[name] = rows[0].code;
      ids[name] = personId;
    }
  });
  beforeEach(async () => {
    await sql.query('DELETE FROM sign_in_attempts');
    tablet = shop.visitor();
    for (const signInName of ['bea', 'ada']) await fullSignIn(signInName);
  });
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });

  const fullSignIn = (signInName: string, visitor = tablet) =>
    visitor.call(peopleOperations.signIn, { signInName, password: demoPassword });
  const scan = (name: string, by = pin, visitor = tablet) =>
    visitor.call(accessOperations.switchPerson, { badge: badges[name] ?? '', pin: by });
  const me = async (visitor = tablet) => (await visitor.call(peopleOperations.me, {})).body;

  it('changes hands by badge and PIN, with a new session each time', async () => {
    const before = tablet.cookie;
    expect((await scan('bea')).body).toMatchObject({ id: ids.bea });
    expect((await me()).id).toBe(ids.bea);
    const old = shop.visitor();
    old.cookie = before;
    expect((await old.call(peopleOperations.me, {})).status).toBe(401);
    expect((await scan('ada')).body).toMatchObject({ id: ids.ada });
    const { rows } = (await tablet.call(accessOperations.ownSessions, {})).body;
    expect(rows.find(({ isThis }) => isThis)).toMatchObject({ by: 'badge', personName: 'Tansy, technician' });
  });

  it('wants a full sign-in of that person on that device first: not of another, not elsewhere', async () => {
    expect((await scan('cato')).body.type).toBe('/problems/full-sign-in-needed');
    const elsewhere = shop.visitor();
    expect((await scan('ada', pin, elsewhere)).body.type).toBe('/problems/full-sign-in-needed');
    elsewhere.cookie = 'hubwright-device=made-up';
    expect((await scan('ada', pin, elsewhere)).body.type).toBe('/problems/full-sign-in-needed');
    const unknown = await tablet.call(accessOperations.switchPerson, { badge: 'HB-0000000000000', pin });
    expect(unknown.body.type).toBe('/problems/full-sign-in-needed');
  });

  it('forgets a full sign-in after the shop’s hours, and a switched session ends with it', async () => {
    await scan('bea');
    const { rows } = await sql.query<{ left: number }>(
      `SELECT (sess ->> 'endsAt')::float8 - (sess ->> 'startedAt')::float8 AS left FROM session WHERE sess ->> 'by' = 'badge'
       ORDER BY sess ->> 'startedAt' DESC LIMIT 1`,
    );
    expect(rows[0]?.left).toBeLessThanOrEqual(12 * hour * 1000);
    clock.seconds += 11.9 * hour;
    expect((await scan('ada')).status).toBe(200);
    const { rows: short } = await sql.query<{ left: number }>(
      `SELECT (sess ->> 'endsAt')::float8 - (sess ->> 'startedAt')::float8 AS left FROM session WHERE sess ->> 'by' = 'badge'
       ORDER BY sess ->> 'startedAt' DESC LIMIT 1`,
    );
    expect(short[0]?.left).toBeLessThan(0.2 * hour * 1000);
    await sql.query(
      `UPDATE session SET sess = jsonb_set(sess::jsonb, '{endsAt}', '1')::json WHERE sess ->> 'by' = 'badge'`,
    );
    expect((await tablet.call(peopleOperations.me, {})).status).toBe(401);
    clock.seconds += 0.2 * hour;
    expect((await scan('ada')).body.type).toBe('/problems/full-sign-in-needed');
  });

  it('takes no badge at all where the shop says so', async () => {
    await sql.query('UPDATE shop_profile SET badge_switch_hours = 0');
    expect((await scan('bea')).body.type).toBe('/problems/full-sign-in-needed');
    await sql.query('UPDATE shop_profile SET badge_switch_hours = 12');
    expect((await scan('bea')).status).toBe(200);
  });

  it('locks the PIN after five wrong ones until a full sign-in, and counts wrong badges by address', async () => {
    for (const wrong of ['1357', '1358', '1359', '1360', '1361'])
      expect((await scan('bea', wrong)).body.type).toBe('/problems/switch-refused');
    expect((await scan('bea')).body.type).toBe('/problems/pin-locked');
    expect((await fullSignIn('bea')).status).toBe(200);
    await fullSignIn('ada');
    expect((await scan('bea')).status).toBe(200);
    const stranger = shop.visitor();
    const types: unknown[] = [];
    for (let i = 0; i < 12; i += 1) types.push((await scan('ada', pin, stranger)).body.type);
    expect(types.at(-1)).toBe('/problems/sign-in-locked');
  });

  it('locked shows who and lets nothing else through; unlocking takes their PIN, or another takes over', async () => {
    expect((await tablet.call(accessOperations.lockSession, {})).status).toBe(200);
    expect(await me()).toMatchObject({ id: ids.ada, locked: true });
    for (const answer of [
      await tablet.call(peopleOperations.shop, {}),
      await tablet.call(accessOperations.ownSessions, {}),
      await tablet.send('GET', '/api/live'),
      await tablet.call(accessOperations.chooseOwnPin, { password: demoPassword, pin: '9753' }),
    ])
      expect(answer).toMatchObject({ status: 423, body: { type: '/problems/session-locked' } });
    const unlock = (signature: { pin: string } | { password: string }) =>
      tablet.call(accessOperations.unlockSession, { signature });
    expect((await unlock({ pin: '1357' })).body.type).toBe('/problems/signature-refused');
    expect((await unlock({ pin })).body).toMatchObject({ id: ids.ada, locked: false });
    expect((await tablet.call(peopleOperations.shop, {})).status).toBe(200);
    await tablet.call(accessOperations.lockSession, {});
    expect((await scan('bea')).body).toMatchObject({ id: ids.bea, locked: false });
    expect((await tablet.call(peopleOperations.shop, {})).status).toBe(200);
  });

  it('does not take a revoked badge, nor one of somebody whose account is off', async () => {
    await sql.query('UPDATE badges SET revoked_at = now() WHERE code = $1', [badges.bea]);
    expect((await scan('bea')).body.type).toBe('/problems/full-sign-in-needed');
    await sql.query('UPDATE badges SET revoked_at = NULL WHERE code = $1', [badges.bea]);
    await sql.query('UPDATE people SET active = false WHERE id = $1', [ids.bea]);
    expect((await scan('bea')).body.type).toBe('/problems/full-sign-in-needed');
    await sql.query('UPDATE people SET active = true WHERE id = $1', [ids.bea]);
  });
});
