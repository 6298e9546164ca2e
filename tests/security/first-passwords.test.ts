import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { generate } from 'otplib';
import pg from 'pg';
import { demoPassword, personWith, setUp, signedIn } from '../support/builders.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const run = promisify(execFile);
const given = 'reeds beside the long canal';
const hour = 3_600;

describe('a password that somebody else gave', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let administrator: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('empty', { clock });
    await setUp(shop);
    administrator = await signedIn(shop, 'first');
  });
  afterAll(() => shop.close());
  const signIn = (signInName: string, password: string, visitor = shop.visitor()) =>
    visitor.call(peopleOperations.signIn, { signInName, password });

  it('is for 72 hours: then it opens nothing, says so only to who knows it, and another is given', async () => {
    const { personId } = await personWith(shop, 'technician', 'bench');
    const reset = { personId, password: given, reason: 'Forgot it' };
    expect((await administrator.call(accessOperations.resetPassword, reset)).status).toBe(200);
    clock.seconds += 71.9 * hour;
    expect((await signIn('bench', given)).body).toMatchObject({ due: 'own-password' });
    clock.seconds += 0.2 * hour;
    expect((await signIn('bench', given)).body.type).toBe('/problems/first-password-expired');
    expect((await signIn('bench', 'no such phrase at all')).body.type).toBe('/problems/sign-in-refused');
    const again = await signedIn(shop, 'first');
    expect((await again.call(accessOperations.resetPassword, reset)).status).toBe(200);
    expect((await signIn('bench', given)).status).toBe(200);
  });

  it('that was replaced in time has no end', async () => {
    await personWith(shop, 'technician', 'fitter');
    clock.seconds += 100 * hour;
    expect((await signIn('fitter', demoPassword)).body).toMatchObject({ due: null });
  });
});

describe('the only administrator who lost all', () => {
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
  const signIn = (signInName: string, password: string, visitor = shop.visitor()) =>
    visitor.call(peopleOperations.signIn, { signInName, password });

  it('is let in again by a first password made on the machine: on record, and for nobody else', async () => {
    const visitor = await signedIn(shop, 'first');
    const begun = await visitor.call(accessOperations.beginSecondFactor, { password: demoPassword });
    const code = await generate({ secret: begun.body.secret, epoch: Math.floor(Date.now() / 1000) });
    expect((await visitor.call(accessOperations.confirmSecondFactor, { code })).status).toBe(200);
    expect((await signIn('first', demoPassword)).body.type).toBe('/problems/code-needed');

    await expect(letIn('bench')).rejects.toMatchObject({ code: 1, stderr: /no active administrator/ });
    await expect(letIn('nobody')).rejects.toMatchObject({ code: 1, stderr: /no active administrator/ });
    const { stdout } = await letIn('first');
    const password = /for 72 hours: (\S+)/.exec(stdout)?.[1] ?? '';
    expect(password).toMatch(/^([a-z2-9]{5}-){3}[a-z2-9]{5}$/);
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(401);
    expect((await signIn('first', demoPassword)).status).toBe(401);
    const anew = shop.visitor();
    expect((await signIn('first', password, anew)).body).toMatchObject({ due: 'own-password', hasSecondFactor: false });
    const own = { password, newPassword: 'three geese over the hangar' };
    expect((await anew.call(accessOperations.chooseOwnPassword, own)).status).toBe(200);
    const { rows } = await sql.query<{ body: string }>(
      "SELECT body FROM record_entries WHERE body LIKE '%let-administrator-in%'",
    );
    expect(rows).toHaveLength(1);
    expect(rows[0]?.body).toContain('lost the phone');
    expect(rows[0]?.body).not.toContain(password);
  });

  /** The program as it is run beside the server. */
  const letIn = (signInName: string) =>
    run(process.execPath, ['apps/server/dist/let-in.js', signInName, '--because', 'lost the phone'], {
      env: {
        ...process.env,
        NODE_OPTIONS: '',
        DATABASE_URL: shop.databaseUrl,
        HUBWRIGHT_DATA: shop.dataFolder,
      },
    });
});
