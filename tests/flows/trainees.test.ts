import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { type Process, peopleOperations } from '@hubwright/contracts/people/operations';
import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { weightsFound } from '../../seed/data/manuals/static-balance.ts';
import { newPerson } from '../support/builders.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep, correctSignOff, traveler: travelerRead, benchBoard } = travelerOperations;
/** The supervisor's own, unlike everyone else's, so that whose secret it is can be told apart. */
const supervisorSecret = { password: 'an otter under the millrace', pin: '735284' };

describe('a trainee', () => {
  let shop: ShopApp;
  let job: Job;
  let sql: pg.Client;
  let trainee: Visitor;
  let traineeId: string;
  let supervisor: { personId: string };
  let supervisorVisitor: Visitor;
  let administrator: Visitor;
  let admin: Awaited<ReturnType<typeof actorOf>>;

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    job = await Job.arrived(shop, 'QT6001');
    await job.tornDown();
    admin = await actorOf(shop, 'administrator');
    administrator = await as(shop, 'administrator');
    trainee = await as(shop, 'piers');
    traineeId = (await actorOf(shop, 'piers')).personId;
    const person = { signInName: 'alwin', displayName: 'Alwin Supervisor', initials: 'AS' };
    supervisor = await newPerson(shop, { ...person, roles: ['technician', 'inspector'] }, supervisorSecret);
    supervisorVisitor = shop.visitor();
    const signIn = { signInName: 'alwin', password: supervisorSecret.password };
    expect((await supervisorVisitor.call(peopleOperations.signIn, signIn)).status).toBe(200);
    for (const process of ['teardown', 'cleaning', 'dimensional-inspection'] as const)
      for (const level of ['perform', 'inspect'] as const) await grant(supervisor.personId, process, level);
    await grant(traineeId, 'teardown', 'trainee');
  }, 120_000);
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });

  const grant = (personId: string, process: Process, level: 'trainee' | 'perform' | 'inspect') =>
    shop.run(grantAuthorisation, { personId, process, level, validFrom: day(0) }, admin);
  const head = () => job.nextAt('assembly');
  const beside = (signature: object = { pin: supervisorSecret.pin }, supervisorId = supervisor.personId) => ({
    ...{ supervisorId, supervisorSignature: signature as typeof pin },
  });
  const refused = async (more: object, expected: { status: number; type: string; says?: object }) => {
    const input = { ...(await job.entryFor(await head())), ...more };
    await expectRefused({ shop, visitor: trainee }, { operation: signStep, input }, expected);
  };

  it('sees the step among their own, and who may supervise it', async () => {
    const { body } = await trainee.call(benchBoard, { limit: 50 });
    const step = await head();
    expect(step.process).toBe('teardown');
    expect(body.mine.map(({ stepId }) => stepId)).toContain(step.id);
    const asked = await trainee.call(trainingOperations.supervision, { process: 'teardown' });
    expect(asked.body.needed).toBe(true);
    expect(asked.body.supervisors).toContainEqual({
      ...{ id: supervisor.personId, displayName: 'Alwin Supervisor', hasPin: true },
    });
    const own = await supervisorVisitor.call(trainingOperations.supervision, { process: 'teardown' });
    expect(own.body).toEqual({ needed: false, supervisors: [] });
  });

  it('alone is refused with who can supervise, and nothing is changed', async () => {
    await refused({}, { status: 409, type: 'supervisor-missing' });
    const answer = await trainee.call(signStep, await job.entryFor(await head()));
    expect(answer.body.detail).toContain('Alwin Supervisor');
    expect(answer.body).toMatchObject({ supervisors: expect.arrayContaining(['Jory Penhallow']) });
  });

  it('is not supervised by someone who is not authorised, by themselves, with half a signature, or another’s secret', async () => {
    const { personId: clerk } = await actorOf(shop, 'maren');
    await refused(beside(pin, clerk), { status: 409, type: 'supervisor-wrong' });
    await refused(beside(pin, traineeId), { status: 409, type: 'supervisor-wrong' });
    await refused({ supervisorId: supervisor.personId }, { status: 422, type: 'invalid-input' });
    await refused({ supervisorSignature: pin }, { status: 422, type: 'invalid-input' });
    await refused(beside(pin), { status: 403, type: 'signature-refused' });
    await refused(beside({ password: 'something else altogether' }), { status: 403, type: 'signature-refused' });
    const answer = await trainee.call(signStep, { ...(await job.entryFor(await head())), ...beside(pin) });
    expect(answer.body.errors).toMatchObject([{ pointer: '/supervisorSignature' }]);
    expect((await trainee.call(peopleOperations.me, {})).status).toBe(200);
  });

  it('signs with the supervisor: two sign-offs of one content, each under its own authorisation, in one entry', async () => {
    const step = await head();
    const entry = { ...(await job.entryFor(step)), ...beside() };
    const answer = await trainee.call(signStep, entry);
    expect(answer.status).toBe(200);
    const { rows } = await sql.query(
      'SELECT * FROM sign_offs WHERE step_id = $1 ORDER BY countersigns_id NULLS FIRST',
      [step.id],
    );
    const [own, second] = rows;
    expect(rows).toHaveLength(2);
    expect([own.person_id, own.countersigns_id, own.authorisation.level]).toEqual([traineeId, null, 'trainee']);
    expect([second.person_id, second.countersigns_id]).toEqual([supervisor.personId, own.id]);
    expect(second.authorisation).toMatchObject({ process: 'teardown', level: 'perform' });
    expect([second.content, second.content_hash]).toEqual([own.content, own.content_hash]);
    expect(JSON.parse(own.content).supervision).toEqual({ traineeId, supervisorId: supervisor.personId });
    expect(second.meaning).toBe(signStep.countersigns);
    const { rows: entries } = await sql.query('SELECT body FROM record_entries WHERE id = $1', [own.entry_id]);
    const record = JSON.parse(entries[0].body);
    expect(record.signed).toMatchObject({
      by: 'pin',
      countersigned: { person: supervisor.personId, meaning: signStep.countersigns, by: 'pin' },
    });
    expect(record.signed.signOffs).toHaveLength(2);
    expect((await verifyDatabase(shop.databaseUrl)).faults).toEqual([]);
  });

  it('never leaves the supervisor’s secret anywhere', async () => {
    const { rows: tables } = await sql.query<{ name: string }>(
      `SELECT quote_ident(table_name) AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE'`,
    );
    for (const { name } of tables) {
      const found = await sql.query(
        `SELECT count(*)::int AS n FROM ${name} t WHERE strpos(t::text, 'supervisorSignature') > 0 OR strpos(t::text, $1) > 0`,
        [`"${supervisorSecret.pin}"`],
      );
      expect({ name, n: found.rows[0]?.n }).toEqual({ name, n: 0 });
    }
  });

  it('and supervisor stand side by side on the traveler, and are counted in the training log', async () => {
    const { travelerId } = await head();
    const { body } = await trainee.call(travelerRead, { travelerId });
    const signOffs = body.steps.flatMap((step) => step.signOffs);
    const own = signOffs.find(({ person }) => person.id === traineeId);
    expect(own?.supervisor).toMatchObject({ id: supervisor.personId, displayName: 'Alwin Supervisor' });
    expect(signOffs.find(({ countersignsId }) => countersignsId === own?.id)?.person.id).toBe(supervisor.personId);
    const log = await administrator.call(trainingOperations.trainingLog, { personId: traineeId });
    expect(log.body.supervised).toMatchObject([{ process: 'teardown', steps: 1, supervisors: ['Alwin Supervisor'] }]);
    expect(log.body.supervised[0]?.minutes).toBeGreaterThan(0);
  });

  it('is corrected together with the supervisor, whoever’s line is corrected', async () => {
    const { travelerId } = await head();
    const { body } = await trainee.call(travelerRead, { travelerId });
    const second = body.steps.flatMap((step) => step.signOffs).find(({ countersignsId }) => countersignsId !== null);
    const form = weightsFound.map(({ name }) => ({ name, value: 'none' }));
    const correction = {
      signOffId: second?.id ?? '',
      values: [],
      form,
      reason: 'wrong traveler scanned',
      signature: pin,
    };
    expect((await trainee.call(correctSignOff, correction)).body.type).toBe('/problems/supervisor-missing');
    expect((await trainee.call(correctSignOff, { ...correction, ...beside() })).status).toBe(200);
    const { rows } = await sql.query(
      'SELECT count(*)::int AS n FROM sign_offs WHERE supersedes_id = $1 OR countersigns_id IS NOT NULL',
      [second?.countersignsId],
    );
    expect(rows[0].n).toBe(3);
    const log = await administrator.call(trainingOperations.trainingLog, { personId: traineeId });
    expect(log.body.supervised[0]?.steps).toBe(1);
  });

  it('fully authorised by now signs without a supervisor, and is not given one', async () => {
    const { id } = await shop.run(
      grantAuthorisation,
      { personId: traineeId, process: 'teardown', level: 'perform', validFrom: day(0) },
      admin,
    );
    const step = await job.nextSteps().then((steps) => steps.find(({ process }) => process === 'teardown'));
    const entry = step ? await job.entryFor(step) : undefined;
    if (entry)
      expect((await trainee.call(signStep, { ...entry, ...beside() })).body.type).toBe(
        '/problems/supervisor-not-needed',
      );
    const revoke = { authorisationId: id, reason: 'granted too early' };
    expect((await administrator.call(peopleOperations.revokeAuthorisation, revoke)).status).toBe(200);
  });

  it('is not inspected by who supervised the work; the refusal names who may', async () => {
    await shop.run(
      grantAuthorisation,
      { personId: traineeId, process: 'cleaning', level: 'trainee', validFrom: day(0) },
      admin,
    );
    const held = await job.reads.authorisation.findFirstOrThrow({
      where: { personId: traineeId, process: 'cleaning', level: 'perform' },
    });
    await administrator.call(peopleOperations.revokeAuthorisation, {
      ...{ authorisationId: held.id, reason: 'back under supervision' },
    });
    let step = await job.nextAt('blade 1');
    expect(step.process).toBe('cleaning');
    const load = { process: 'cleaning' as const, equipment: 'Strip tank 2', stepIds: [step.id] };
    const begun = await supervisorVisitor.call(loadOperations.startLoad, load);
    expect(begun.status).toBe(200);
    const sign = { loadId: begun.body.id, signature: pin };
    const alone = await trainee.call(loadOperations.signLoad, sign, { version: 1 });
    expect(alone.body.type).toBe('/problems/supervisor-missing');
    expect((await trainee.call(loadOperations.signLoad, { ...sign, ...beside() }, { version: 1 })).status).toBe(200);
    const { rows } = await sql.query('SELECT person_id FROM sign_offs WHERE step_id = $1', [step.id]);
    expect(rows.map(({ person_id: id }) => id).sort()).toEqual([traineeId, supervisor.personId].sort());
    for (step = await job.nextAt('blade 1'); step.level !== 'inspect'; step = await job.nextAt('blade 1'))
      await job.sign(step);
    expect(['teardown', 'cleaning', 'dimensional-inspection']).toContain(step.process);
    const answer = await supervisorVisitor.call(signStep, {
      ...(await job.entryFor(step)),
      signature: { pin: supervisorSecret.pin },
    });
    expect(answer.body.type).toBe('/problems/own-inspection');
    expect(answer.body.detail).toMatch(/You supervised .*: .*Bram Ostler/);
    const list = {
      process: step.process as 'teardown',
      personIds: [job.people.inspector.personId],
      reason: 'one pair of eyes',
    };
    expect((await administrator.call(trainingOperations.setInspectionList, list)).status).toBe(200);
    const sunniva = await as(shop, 'sunniva');
    const unnamed = await sunniva.call(signStep, await job.entryFor(step));
    expect(unnamed.body).toMatchObject({ type: '/problems/not-on-inspection-list', holders: ['Bram Ostler'] });
    await job.sign(step);
  });

  it('is found by signatures of the supervisor too', async () => {
    const { body } = await administrator.call(accessOperations.listSignatures, { personId: traineeId, limit: 10 });
    expect(body.rows.length).toBeGreaterThan(0);
  });
});
