import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { issueBadge } from '../../apps/server/src/modules/people/issue-badge.command.ts';
import { placeHold } from '../../apps/server/src/modules/work-orders/place-hold.command.ts';
import { demoPassword, firstPassword } from '../../seed/data/people.ts';
import { EventStream } from '../support/event-stream.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('sessions and departures', () => {
  let shop: ShopApp;
  let sql: pg.Client;
  let administrator: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    administrator = await as(shop, 'administrator');
  }, 60_000);
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });
  const stillIn = async (visitor: Visitor) => (await visitor.call(peopleOperations.me, {})).status === 200;
  const versionOf = async (personId: string) => {
    const { rows } = (await administrator.call(peopleOperations.listPeople, {})).body;
    return rows.find(({ id }) => id === personId)?.version ?? 0;
  };

  it('are listed to their owner with device, since when and last seen, and ended one by one', async () => {
    const [here, there] = [await as(shop, 'parts-room'), await as(shop, 'parts-room')];
    const { rows } = (await here.call(accessOperations.ownSessions, {})).body;
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({ by: 'password', since: expect.any(String), lastSeen: expect.any(String) });
    expect(JSON.stringify(rows)).not.toContain((here.cookie.split('.')[0] ?? '').slice(10));
    const other = rows.find(({ isThis }) => !isThis)?.ref ?? '';
    expect((await here.call(accessOperations.endOwnSession, { ref: other })).status).toBe(200);
    expect([await stillIn(here), await stillIn(there)]).toEqual([true, false]);
  });

  it('of others are listed and ended by administrators alone; to anyone else they do not exist', async () => {
    const technician = await as(shop, 'technician');
    const desk = await as(shop, 'front-desk');
    const { rows } = (await administrator.call(accessOperations.listSessions, {})).body;
    const theirs = rows.find(({ personName }) => personName === 'Jory Penhallow')?.ref ?? '';
    expect((await desk.call(accessOperations.endOwnSession, { ref: theirs })).status).toBe(404);
    expect((await desk.call(accessOperations.endSession, { ref: theirs })).status).toBe(403);
    expect((await desk.call(accessOperations.listSessions, {})).status).toBe(403);
    expect(await stillIn(technician)).toBe(true);
    expect((await administrator.call(accessOperations.endSession, { ref: theirs })).status).toBe(200);
    expect(await stillIn(technician)).toBe(false);
  });

  it('end elsewhere when the password or the PIN is changed, and go on here', async () => {
    const [here, there] = [await as(shop, 'caspar'), await as(shop, 'caspar')];
    const wrong = { password: 'not my password', pin: '8642' };
    expect((await here.call(accessOperations.chooseOwnPin, wrong)).body.type).toBe('/problems/signature-refused');
    expect((await here.call(accessOperations.chooseOwnPin, { password: demoPassword, pin: '8642' })).status).toBe(200);
    expect([await stillIn(here), await stillIn(there)]).toEqual([true, false]);
    const again = await as(shop, 'caspar');
    const own = { password: demoPassword, newPassword: 'the kettle sings at nine' };
    expect((await here.call(accessOperations.chooseOwnPassword, own)).status).toBe(200);
    expect([await stillIn(here), await stillIn(again)]).toEqual([true, false]);
    expect((await here.call(peopleOperations.me, {})).body.hasPin).toBe(true);
  });

  it('end with the account, open live streams too', async () => {
    const manager = await actorOf(shop, 'manager');
    const visitor = await as(shop, 'manager');
    const stream = await EventStream.open(shop.address, visitor.cookie);
    const body = (active: boolean) => ({
      ...{ personId: manager.personId, displayName: 'Hester Quayle', roles: ['manager' as const], active },
    });
    const version = await versionOf(manager.personId);
    expect((await administrator.call(peopleOperations.changePerson, body(false), { version })).status).toBe(200);
    const began = performance.now();
    await stream.until(() => stream.ended);
    expect(performance.now() - began).toBeLessThan(5_000);
    expect(await stillIn(visitor)).toBe(false);
    await administrator.call(peopleOperations.changePerson, body(true), { version: version + 1 });
  });

  it('a departure ends everything at once, says what is left to take over, and leaves name and signatures', async () => {
    const job = await Job.arrived(shop, '8802');
    await job.tornDown();
    const { inspector } = job.people;
    await shop.run(
      placeHold,
      { workOrderId: job.id, kind: 'other', reason: 'waits for a drawing', liftedByRole: 'inspector' } as never,
      inspector,
      { version: (await job.workOrder()).version },
    );
    await shop.run(issueBadge, { personId: inspector.personId }, await actorOf(shop, 'administrator'));
    const visitor = await as(shop, 'inspector');
    const { rows: badge } = await sql.query('SELECT code FROM badges WHERE person_id = $1', [inspector.personId]);
    const end = { personId: inspector.personId, reason: 'retired' };
    const version = await versionOf(inspector.personId);
    const rehearsed = await administrator.call(accessOperations.endPerson, end, { version, dryRun: true });
    expect(rehearsed.body.inHand.holds).toMatchObject([{ workOrder: job.number, reason: 'waits for a drawing' }]);
    expect(await stillIn(visitor)).toBe(true);
    const ended = await administrator.call(accessOperations.endPerson, end, { version });
    expect(ended.body).toMatchObject({ inHand: rehearsed.body.inHand });

    expect(await stillIn(visitor)).toBe(false);
    const signIn = { signInName: 'inspector', password: demoPassword };
    expect((await shop.visitor().call(peopleOperations.signIn, signIn)).body.type).toBe('/problems/sign-in-refused');
    const scanned = await visitor.call(accessOperations.switchPerson, { badge: badge[0].code, pin: pin.pin });
    expect(scanned.body.type).toBe('/problems/full-sign-in-needed');
    const { rows: left } = await sql.query(
      `SELECT pin_hash, (SELECT count(*)::int FROM authorisations WHERE person_id = p.id AND revoked_on IS NULL) AS held,
         (SELECT count(*)::int FROM badges WHERE person_id = p.id AND revoked_at IS NULL) AS badges,
         (SELECT count(*)::int FROM second_factors WHERE person_id = p.id) AS factors,
         (SELECT count(*)::int FROM device_sign_ins WHERE person_id = p.id) AS devices FROM people p WHERE id = $1`,
      [inspector.personId],
    );
    expect(left).toEqual([{ pin_hash: null, held: 0, badges: 0, factors: 0, devices: 0 }]);
    const kept = await administrator.call(accessOperations.listSignatures, { personId: inspector.personId, limit: 1 });
    expect(kept.body.rows).toMatchObject([
      { personName: 'Bram Ostler', authorisation: { process: expect.any(String) } },
    ]);
    const { body } = await administrator.call(workOrderOperations.workOrder, { workOrderId: job.id });
    expect(JSON.stringify(body)).toContain('waits for a drawing');
  });

  it('who returns is the same person with nothing of before: roles, password and authorisations are given anew', async () => {
    const { rows } = await sql.query("SELECT id, version FROM people WHERE sign_in_name = 'inspector'");
    const personId = rows[0].id;
    const on = { personId, displayName: 'Bram Ostler', roles: ['inspector' as const], active: true };
    const turnedOn = await administrator.call(peopleOperations.changePerson, on, { version: rows[0].version });
    expect(turnedOn.body.type).toBe('/problems/has-left');
    const back = { personId, roles: ['technician' as const], password: firstPassword, reason: 'helps out in summer' };
    expect((await administrator.call(accessOperations.takeBackPerson, back, { version: rows[0].version })).status).toBe(
      200,
    );
    const old = { signInName: 'inspector', password: demoPassword };
    expect((await shop.visitor().call(peopleOperations.signIn, old)).status).toBe(401);
    const anew = await shop.visitor().call(peopleOperations.signIn, { ...old, password: firstPassword });
    expect(anew.body).toMatchObject({ id: personId, roles: ['technician'], due: 'own-password', hasPin: false });
    const people = (await administrator.call(peopleOperations.listPeople, {})).body.rows;
    const held = people.find(({ id }) => id === personId)?.authorisations.filter(({ revokedOn }) => revokedOn === null);
    expect(held).toEqual([]);
  });

  it('never leaves the shop without an administrator, nor ends one’s own account', async () => {
    const admin = await actorOf(shop, 'administrator');
    const end = () => ({ personId: admin.personId, reason: 'gone' });
    const version = await versionOf(admin.personId);
    const last = await administrator.call(accessOperations.endPerson, end(), { version });
    expect(last.body.type).toBe('/problems/last-administrator');
  });
});
