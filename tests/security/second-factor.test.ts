import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { generate } from 'otplib';
import pg from 'pg';
import { setUpShop } from '../../apps/server/src/modules/people/set-up-shop.command.ts';
import { serverActor } from '../../apps/server/src/platform/command/actor.ts';
import { demoPassword, personWith, smallestShop } from '../support/builders.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { secondFactorRoles: _, ...profile } = smallestShop.shop;

describe('a second factor', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let sql: pg.Client;
  let administrator: Visitor;
  let secret: string;
  let recovery: string[];
  beforeAll(async () => {
    shop = await ShopApp.open('empty', { clock });
    // A profile that says nothing of second factors: the default of a new shop.
    await shop.run(setUpShop, { ...smallestShop, shop: profile }, serverActor);
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    administrator = shop.visitor();
    await signIn({}, administrator);
  });
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });

  const signIn = (more: { code?: string; password?: string } = {}, visitor = shop.visitor()) =>
    visitor.call(peopleOperations.signIn, { signInName: 'first', password: demoPassword, ...more });
  const codeNow = (offset = 0) => generate({ secret, epoch: Math.floor(clock.now().getTime() / 1000) + offset * 30 });
  const unlocked = () => sql.query("DELETE FROM sign_in_attempts WHERE key LIKE 'a%'");

  it('is required of a new shop’s administrators: until it is set up nothing else is open, and to others everything is', async () => {
    expect((await administrator.call(peopleOperations.me, {})).body).toMatchObject({ due: 'second-factor' });
    for (const answer of [
      await administrator.call(peopleOperations.listPeople, {}),
      await administrator.call(peopleOperations.shop, {}),
      await administrator.call(accessOperations.ownSessions, {}),
      await administrator.send('GET', '/api/live'),
    ])
      expect(answer).toMatchObject({ status: 403, body: { type: '/problems/second-factor-due' } });
    await personWith(shop, 'technician', 'bench');
    const technician = shop.visitor();
    await technician.call(peopleOperations.signIn, { signInName: 'bench', password: demoPassword });
    expect((await technician.call(peopleOperations.me, {})).body).toMatchObject({ due: null, hasSecondFactor: false });
    expect((await technician.call(peopleOperations.shop, {})).status).toBe(200);
  });

  it('is set up with the password, a picture to scan and a code of it; a wrong code, or none begun, sets up nothing', async () => {
    const confirm = (code: string) => administrator.call(accessOperations.confirmSecondFactor, { code });
    expect((await confirm('123456')).body.type).toBe('/problems/no-code-pending');
    const wrong = await administrator.call(accessOperations.beginSecondFactor, { password: 'not my password' });
    expect(wrong.body.type).toBe('/problems/signature-refused');
    const begun = await administrator.call(accessOperations.beginSecondFactor, { password: demoPassword });
    secret = begun.body.secret;
    recovery = begun.body.recoveryCodes;
    expect(secret).toMatch(/^[A-Z2-7]{32}$/);
    expect(begun.body.picture).toMatch(/^data:image\/svg\+xml;base64,/);
    expect(new Set(recovery).size).toBe(10);
    expect((await confirm('000000')).body.type).toBe('/problems/code-refused');
    expect((await administrator.call(peopleOperations.me, {})).body.hasSecondFactor).toBe(false);
    const other = shop.visitor();
    await signIn({}, other);
    expect((await confirm(await codeNow())).status).toBe(200);
    expect((await administrator.call(peopleOperations.me, {})).body).toMatchObject({
      due: null,
      hasSecondFactor: true,
    });
    expect((await administrator.call(peopleOperations.listPeople, {})).status).toBe(200);
    expect((await other.call(peopleOperations.me, {})).status).toBe(401);
  });

  it('keeps its secret sealed and its recovery codes hashed; neither stands in records, receipts or sessions', async () => {
    const { rows } = await sql.query<{ text: string }>(
      `SELECT row_to_json(t)::text AS text FROM second_factors t UNION ALL SELECT row_to_json(t)::text FROM recovery_codes t
       UNION ALL SELECT body FROM record_entries UNION ALL SELECT reply::text FROM receipts UNION ALL SELECT sess::text FROM session`,
    );
    const all = rows.map(({ text }) => text).join('\n');
    for (const plain of [secret, ...recovery, ...recovery.map((code) => code.replaceAll('-', ''))])
      expect(all).not.toContain(plain);
    const { rows: sealed } = await sql.query('SELECT sealed FROM second_factors');
    expect(sealed[0].sealed).toMatch(/^1\.[\w-]{16}\.[\w-]{22}\.[\w-]{43}$/);
  });

  it('asks for the code only after the right password, and takes each code once, this step’s or a neighbour’s', async () => {
    expect((await signIn({ password: 'not my password at all' })).body.type).toBe('/problems/sign-in-refused');
    expect((await signIn()).body.type).toBe('/problems/code-needed');
    // The code that confirmed the set-up is used; the next steps' are not.
    clock.seconds += 90;
    const code = await codeNow();
    expect((await signIn({ code: `${code.slice(0, 3)} ${code.slice(3)}` })).status).toBe(200);
    expect((await signIn({ code })).body.type).toBe('/problems/code-refused');
    expect((await signIn({ code: await codeNow(-1) })).body.type).toBe('/problems/code-refused');
    expect((await signIn({ code: await codeNow(1) })).status).toBe(200);
    clock.seconds += 120;
    expect((await signIn({ code: await codeNow(-2) })).body.type).toBe('/problems/code-refused');
    expect((await signIn({ code: await codeNow(2) })).body.type).toBe('/problems/code-refused');
    expect((await signIn({ code: await codeNow(-1) })).status).toBe(200);
    await unlocked();
  });

  it('lets two requests with one code not both in', async () => {
    clock.seconds += 90;
    const code = await codeNow();
    const answers = await Promise.all([signIn({ code }), signIn({ code }), signIn({ code })]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 401, 401]);
    await unlocked();
  });

  it('takes a recovery code once, however it is written', async () => {
    const [code = '', next = ''] = recovery;
    expect((await signIn({ code: code.toLowerCase().replaceAll('-', ' ') })).status).toBe(200);
    expect((await signIn({ code })).body.type).toBe('/problems/code-refused');
    expect((await signIn({ code: next })).status).toBe(200);
    await unlocked();
  });

  it('locks like passwords do: ten wrong codes, although the password was right each time', async () => {
    const types: unknown[] = [];
    for (let i = 0; i < 11; i += 1) types.push((await signIn({ code: `00000${i % 10}` })).body.type);
    expect(types.slice(0, 10)).toEqual(Array(10).fill('/problems/code-refused'));
    expect(types[10]).toBe('/problems/sign-in-locked');
    // The right password alone, asked for its code, gives no try back that a wrong code used up.
    await unlocked();
    for (let i = 0; i < 4; i += 1) await signIn();
    const { rows } = await sql.query("SELECT points FROM sign_in_attempts WHERE key = 'account:first'");
    expect(rows[0].points).toBe(0);
    await unlocked();
  });

  it('is replaced only with a code of the old one, and the sealed secret of one person opens for no other', async () => {
    const begin = (code?: string) =>
      administrator.call(accessOperations.beginSecondFactor, { password: demoPassword, ...(code ? { code } : {}) });
    expect((await begin()).body.type).toBe('/problems/code-needed');
    clock.seconds += 90;
    expect((await begin(await codeNow())).status).toBe(200);
    const second = await personWith(shop, 'administrator', 'second');
    await sql.query(
      `INSERT INTO second_factors (person_id, sealed, last_step, confirmed_at)
       SELECT $1, sealed, 0, now() FROM second_factors`,
      [second.personId],
    );
    clock.seconds += 90;
    const code = await codeNow();
    const swapped = await shop
      .visitor()
      .call(peopleOperations.signIn, { signInName: 'second', password: demoPassword, code });
    expect(swapped.body.type).toBe('/problems/code-refused');
  });

  it('lost altogether is taken away by another administrator, never by oneself; sessions end', async () => {
    const { rows } = await sql.query("SELECT id FROM people WHERE sign_in_name = 'second'");
    const personId = rows[0].id;
    const me = (await administrator.call(peopleOperations.me, {})).body.id;
    const reset = (id: string) =>
      administrator.call(accessOperations.resetSecondFactor, { personId: id, reason: 'lost' });
    expect((await reset(me)).body.type).toBe('/problems/not-yourself');
    expect((await reset(personId)).status).toBe(200);
    const second = shop.visitor();
    const back = await second.call(peopleOperations.signIn, { signInName: 'second', password: demoPassword });
    expect(back.body).toMatchObject({ due: 'second-factor', hasSecondFactor: false });
  });

  it('can be asked of other roles, or of none, by the shop', async () => {
    const change = async (roles: string[]) => {
      const { version } = (await administrator.call(peopleOperations.shop, {})).body;
      const shopNow = { ...profile, secondFactorRoles: roles } as never;
      expect((await administrator.call(peopleOperations.changeShop, shopNow, { version })).status).toBe(200);
    };
    const dueOf = async (signInName: string) =>
      (await shop.visitor().call(peopleOperations.signIn, { signInName, password: demoPassword })).body.due;
    await change(['administrator', 'technician']);
    expect(await dueOf('bench')).toBe('second-factor');
    await change([]);
    expect(await dueOf('bench')).toBeNull();
    expect(await dueOf('second')).toBeNull();
  });
});
