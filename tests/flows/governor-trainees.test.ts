import { governorOperations as op } from '@hubwright/contracts/governor-tests/operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { newPerson } from '../support/builders.ts';
import { day } from '../support/days.ts';
import { atTheBench, BenchRun, beginning, governor } from '../support/governor-visit.ts';
import type { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const secret = { password: 'an otter under the millrace', pin: '735284' };

describe('a trainee at the governor bench', () => {
  let shop: ShopApp;
  let job: Job;
  let trainee: Visitor;
  let technician: Visitor;
  let traineeId: string;
  let supervisor: { personId: string };
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'tobit');
    const administrator = await actorOf(shop, 'administrator');
    const grant = (personId: string, level: 'trainee' | 'perform') =>
      shop.run(grantAuthorisation, { personId, process: 'governor-bench', level, validFrom: day(0) }, administrator);
    trainee = await as(shop, 'piers');
    traineeId = (await actorOf(shop, 'piers')).personId;
    const person = { signInName: 'alwin', displayName: 'Alwin Supervisor', initials: 'AS' };
    supervisor = await newPerson(shop, { ...person, roles: ['technician'] }, secret);
    job = await atTheBench(shop, 'VG9301', await governor(shop, 'Heronby Courser 4'));
    await grant(supervisor.personId, 'perform');
    const held = await job.reads.authorisation.findFirst({
      where: { personId: traineeId, process: 'governor-bench', level: 'perform' },
    });
    if (held)
      await (await as(shop, 'administrator')).call(peopleOperations.revokeAuthorisation, {
        ...{ authorisationId: held.id, reason: 'back under supervision' },
      });
    await grant(traineeId, 'trainee');
  }, 120_000);
  afterAll(() => shop.close());

  const beside = (signature: object = { pin: secret.pin }) => ({
    ...{ supervisorId: supervisor.personId, supervisorSignature: signature as typeof pin },
  });
  const refused = (request: Parameters<typeof expectRefused>[1], status: number, type: string) =>
    expectRefused({ shop, visitor: trainee }, request, { status, type });

  it('begins no run alone, and none with another’s secret', async () => {
    const input = await beginning(job);
    const begin = (more: object) => ({ operation: op.beginGovernorRun, input: { ...input, ...more } });
    await refused(begin({}), 409, 'supervisor-missing');
    await refused(begin(beside(pin)), 403, 'signature-refused');
    await refused(begin({ supervisorId: supervisor.personId }), 422, 'invalid-input');
    await refused(begin({ ...beside(), supervisorId: traineeId, supervisorSignature: pin }), 409, 'supervisor-wrong');
    const own = { operation: op.beginGovernorRun, input: { ...input, ...beside() } };
    await expectRefused({ shop, visitor: technician }, own, { status: 409, type: 'supervisor-not-needed' });
  });

  it('takes no reading in a run that nobody supervises', async () => {
    const run = await BenchRun.begin(job, technician);
    await refused(run.taking(run.point('relief-pressure')), 409, 'run-unsupervised');
    const what = { runId: run.id, what: 'relief valve shims', before: 'as received', after: 'one more' };
    await refused({ operation: op.recordGovernorAdjustment, input: what }, 409, 'run-unsupervised');
    expect((await run.end('broken-off', 'The trainee does it')).status).toBe(200);
  });

  let runId: string;
  it('runs it through with the supervisor who signed beside at its beginning; the record names both', async () => {
    const input = await beginning(job);
    const begun = await trainee.call(op.beginGovernorRun, { ...input, ...beside() });
    expect([begun.status, begun.body]).toEqual([200, begun.body]);
    runId = begun.body.id;
    const { standing, program, supervisor: named } = (await trainee.call(op.governorRun, { runId })).body;
    expect(named?.displayName).toBe('Alwin Supervisor');
    const { body } = await job.reads.recordEntry
      .findFirstOrThrow({ where: { command: 'begin-governor-run' }, orderBy: { at: 'desc' } })
      .then((entry) => ({ body: JSON.parse(entry.body) }));
    expect(body.countersigned).toMatchObject({ person: supervisor.personId, by: 'pin' });
    expect(JSON.stringify(body)).not.toContain(secret.pin);
    for (const [index, { point }] of standing.entries()) {
      const { low, high, unit } = program.content.points.find(({ name }) => name === point) ?? {};
      const reading = { runId, point, value: low ?? high ?? '0', unit: unit ?? 'psi' };
      const oil = { oilTemperature: '165', oilUnit: 'degF' as const };
      // Someone authorised for it may lend a hand in the same run.
      const visitor = index === 0 ? technician : trainee;
      expect((await visitor.call(op.takeGovernorReading, { ...reading, ...oil })).status).toBe(200);
    }
    const { version } = (await trainee.call(op.governorRun, { runId })).body;
    expect((await trainee.call(op.endGovernorRun, { runId, result: 'passed' }, { version })).status).toBe(200);
  });

  it('signs the step with the supervisor: both stand on the certificate, and the run’s supervisor in what was signed', async () => {
    const { stepId, instrumentId } = await beginning(job);
    const entry = {
      ...{ stepId, values: [], instrumentId, sheet: { kind: 'governor-test' as const, runId }, signature: pin },
    };
    await refused({ operation: travelerOperations.signStep, input: entry }, 409, 'supervisor-missing');
    const signed = await trainee.call(travelerOperations.signStep, { ...entry, ...beside() });
    expect([signed.status, signed.body]).toEqual([200, signed.body]);
    const rows = await job.reads.signOff.findMany({ where: { stepId } });
    expect(rows.map(({ personId }) => personId).sort()).toEqual([traineeId, supervisor.personId].sort());
    const { sheet } = JSON.parse(rows[0]?.content ?? '{}');
    expect(sheet.said).toContainEqual({ name: 'Run supervised by', value: 'Alwin Supervisor' });
    const response = await fetch(`${shop.address}/api/governor-runs/${runId}/certificate`, {
      headers: { cookie: trainee.cookie },
    });
    const words = (await readPdf(Buffer.from(await response.arrayBuffer()))).text.replace(/\s+/g, ' ');
    expect(words).toMatch(/Supervised by\s?Alwin Supervisor/);
    expect(words).toMatch(/Alwin Supervisor \(governor bench, supervisor\)/);
  });
});
