import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { newPerson } from '../support/builders.ts';
import { day } from '../support/days.ts';
import { FieldOrder } from '../support/field-order.ts';
import type { Job } from '../support/job.ts';
import { installed } from '../support/on-aircraft.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const secret = { password: 'an otter under the millrace', pin: '735284' };
const readings = [{ rpm: 2_300, amplitude: '0.05', phase: '40' }];

describe('a trainee at the aircraft', () => {
  let shop: ShopApp;
  let job: Job;
  let order: FieldOrder;
  let trainee: Visitor;
  let supervisorId: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    const administrator = await actorOf(shop, 'administrator');
    const grant = (personId: string, process: 'dynamic-balance' | 'return-to-service', level: never) =>
      shop.run(grantAuthorisation, { personId, process, level, validFrom: day(0) }, administrator);
    trainee = await as(shop, 'piers');
    const { personId } = await actorOf(shop, 'piers');
    const person = { signInName: 'alwin', displayName: 'Alwin Supervisor', initials: 'AS' };
    ({ personId: supervisorId } = await newPerson(shop, { ...person, roles: ['technician', 'inspector'] }, secret));
    job = await installed(shop, 'F7601');
    await grant(supervisorId, 'dynamic-balance', 'perform' as never);
    await grant(supervisorId, 'return-to-service', 'approve' as never);
    const held = await job.reads.authorisation.findFirst({
      where: { personId, process: 'dynamic-balance', level: 'perform' },
    });
    if (held)
      await (await as(shop, 'administrator')).call(peopleOperations.revokeAuthorisation, {
        ...{ authorisationId: held.id, reason: 'back under supervision' },
      });
    await grant(personId, 'dynamic-balance', 'trainee' as never);
    order = await FieldOrder.planned(shop, job);
  }, 180_000);
  afterAll(() => shop.close());

  const beside = (supervisorSignature: object = { pin: secret.pin }) => ({ supervisorId, supervisorSignature });
  const asked = async (operation: { readonly id: string }, changes: object) => ({
    operation: operation as typeof op.recordFieldRun,
    input: { fieldBalanceId: order.id, ...changes },
    options: { version: (await order.detail()).version },
  });
  const refused = async (request: Awaited<ReturnType<typeof asked>>, status: number, type: string, by = trainee) =>
    expectRefused({ shop, visitor: by }, request, { status, type });
  const done = async (operation: { readonly id: string }, changes: object) => {
    const { input, options } = await asked(operation, changes);
    const answer = await trainee.call(operation as typeof op.recordFieldRun, input as never, options);
    expect([answer.status, answer.body.detail]).toEqual([200, undefined]);
  };

  it('signs no sheet alone, and none with another’s secret', async () => {
    const signing = (more: object) => asked(op.signFieldSetUp, { ...order.setUpInput(), ...more });
    await refused(await signing({}), 409, 'supervisor-missing');
    await refused(await signing(beside(pin)), 403, 'signature-refused');
    await refused(await signing({ supervisorId }), 422, 'invalid-input');
    const { technician } = order.people;
    await refused(await signing(beside()), 409, 'supervisor-not-needed', technician);
  });

  it('reads nothing under a sheet that nobody supervises', async () => {
    await order.setUp();
    await refused(await asked(op.recordFieldRun, { kind: 'baseline', readings }), 409, 'sheet-unsupervised');
    const weights = [{ place: 'H1', lotCode: 'L-0001', pieces: 1 }];
    await order.baseline();
    await refused(await asked(op.fitFieldWeights, { weights }), 409, 'sheet-unsupervised');
  });

  it('goes through with a supervisor beside at the sheet and at the balance; both stand by the same content', async () => {
    await done(op.signFieldSetUp, { ...order.setUpInput(), ...beside() });
    await done(op.recordFieldRun, { kind: 'baseline', readings });
    await refused(await asked(op.signFieldBalance, { remarks: '', signature: pin }), 409, 'supervisor-missing');
    await done(op.signFieldBalance, { remarks: '', signature: pin, ...beside() });
    const { setUp, balanced } = await order.detail();
    expect([setUp?.supervisor?.displayName, balanced?.supervisor?.displayName]).toEqual(
      Array.from({ length: 2 }, () => 'Alwin Supervisor'),
    );
    expect(JSON.stringify(setUp)).not.toContain('supervisorSignature');
    const rows = await job.reads.fieldSignature.findMany({ where: { fieldBalanceId: order.id } });
    const second = rows.filter(({ kind }) => kind === 'supervised');
    expect(second).toHaveLength(2);
    for (const { personId, countersignsId, contentHash, instrumentId, authorisation } of second) {
      const first = rows.find(({ id }) => id === countersignsId);
      expect([personId, instrumentId, first?.contentHash]).toEqual([supervisorId, null, contentHash]);
      expect([authorisation, first?.authorisation]).toMatchObject([{ level: 'perform' }, { level: 'trainee' }]);
    }
    const { body } = await job.reads.recordEntry.findFirstOrThrow({
      where: { command: 'sign-field-balance' },
      orderBy: { at: 'desc' },
    });
    expect(body).not.toContain(secret.pin);
    expect(JSON.parse(body).signed).toMatchObject({ countersigned: { person: supervisorId, by: 'pin' } });
    expect((await verifyDatabase(shop.databaseUrl)).faults).toEqual([]);
  });

  it('is not released by who supervised; the record names both', async () => {
    const alwin = shop.visitor();
    await alwin.call(peopleOperations.signIn, { signInName: 'alwin', password: secret.password });
    const release = await asked(op.releaseFieldBalance, { signature: { pin: secret.pin } });
    await refused(release, 409, 'own-inspection', alwin);
    await order.released();
    const answer = await fetch(`${shop.address}/api/field-balances/${order.id}/record.pdf`, {
      headers: { cookie: trainee.cookie },
    });
    const { text } = await readPdf(Buffer.from(await answer.arrayBuffer()));
    expect(text).toContain('Alwin Supervisor');
    expect(text).toContain('under my supervision');
  });
});
