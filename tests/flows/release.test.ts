// size: one story told in order; each step stands on the one before

import { createHash } from 'node:crypto';
import { dueDateOperations } from '@hubwright/contracts/due-dates/operations';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { releaseOperations as op } from '@hubwright/contracts/releases/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { KeptDue } from '../../apps/server/src/modules/due-dates/public.ts';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { calibrateInstrument } from '../../apps/server/src/modules/processes/calibrate-instrument.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { liftHold } from '../../apps/server/src/modules/work-orders/lift-hold.command.ts';
import { placeHold } from '../../apps/server/src/modules/work-orders/place-hold.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { vexleyGovernor } from '../../seed/data/manuals/vexley-governor.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/** The governor's manual once more, the torque of the body screws narrowed and a seal added. */
function nextRevision() {
  const content = vexleyGovernor();
  const [route] = content.routes;
  const steps = route?.steps.map((step) => ({
    ...step,
    measures: step.measures.map((measure) =>
      measure.name === 'body screw torque' ? { ...measure, low: '60' } : measure,
    ),
  }));
  return {
    ...content,
    routes: [{ ...route, steps }] as typeof content.routes,
    tboRules: content.tboRules.map((rule) => ({ ...rule })),
  };
}

describe('approval for return to service', () => {
  let shop: ShopApp;
  let job: Job;
  let inspector: Visitor;
  let other: Visitor;
  let technician: Visitor;
  const checklist = async () => (await other.call(op.releaseChecklist, { workOrderId: job.id })).body;
  const approve = async () => ({
    operation: op.approveRelease,
    input: { workOrderId: job.id, signature: pin },
    options: { version: (await job.workOrder()).version },
  });

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, other, technician] = [
      await as(shop, 'inspector'),
      await as(shop, 'sunniva'),
      await as(shop, 'technician'),
    ];
    const reads = readsOf(shop);
    const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
    const application = await reads.application.findFirstOrThrow({
      where: { modelId: model.id, airframe: 'Heronby Courser 4' },
    });
    const governor = { modelId: model.id, applicationId: application.id, parts: [] };
    job = await Job.arrived(shop, 'VG6001', governor);
    await job.inWork();
  });
  afterAll(() => shop.close());

  it('lists everything open by name, with who can close it', async () => {
    const { open, ready, word } = await checklist();
    expect({ ready, word }).toEqual({ ready: false, word: 'inspected' });
    expect(open.map(({ kind }) => kind)).toEqual(expect.arrayContaining(['stage', 'step', 'kit']));
    const assemble = open.find(({ what }) => what.includes('Assemble'));
    expect(assemble?.closedBy.people).toEqual(expect.arrayContaining(['Jory Penhallow', 'Tobit Arkle']));
    const refused = await expectRefused({ shop, visitor: other }, await approve(), {
      status: 409,
      type: 'release-blocked',
    });
    expect((refused.open as unknown[]).length).toBe(open.length);
  });

  it('needs the inspector’s role and the authorisation, and the version that was seen', async () => {
    await expectRefused({ shop, visitor: technician }, await approve(), { status: 403, type: 'not-permitted' });
    await expectRefused(
      { shop, visitor: other },
      { ...(await approve()), options: {} },
      { status: 428, type: 'version-missing' },
    );
    await expectRefused(
      { shop, visitor: other },
      { ...(await approve()), options: { version: 1 } },
      { status: 412, type: 'out-of-date' },
    );
  });

  it('a superseded revision holds the work until an inspector takes it over, differences shown line by line', async () => {
    const workOrder = await job.workOrder();
    const { manualId } = await job.reads.manualRevision.findUniqueOrThrow({ where: { id: workOrder.revisionId } });
    const models = [{ ...nextRevision(), modelId: workOrder.modelId }];
    await shop.run(
      issueRevision,
      { manualId, revision: '8', issuedOn: '2026-01-05', models } as never,
      await actorOf(shop, 'inspector'),
    );
    const step = await job.nextAt('assembly');
    await expectRefused(
      { shop, visitor: technician },
      { operation: travelerOperations.signStep, input: { stepId: step.id, signature: pin } },
      { status: 409, type: 'revision-superseded' },
    );
    expect((await checklist()).open.map(({ kind }) => kind)).toContain('revision');
    const { body: seen } = await technician.call(travelerOperations.revisionDifferences, { workOrderId: job.id });
    const limit = {
      area: 'limit',
      change: 'changed',
      what: 'body screw torque',
      before: '55 to 65 in-lb, 0 decimals, absolute',
      after: '60 to 65 in-lb, 0 decimals, absolute',
      consequences: [],
    };
    expect(seen.differences).toEqual([expect.objectContaining(limit)]);
    const rebase = { workOrderId: job.id, signature: pin };
    const preview = await inspector.call(travelerOperations.rebaseRevision, rebase, {
      version: workOrder.version,
      dryRun: true,
    });
    expect(preview.body).toMatchObject({ differences: seen.differences });
    expect((await job.workOrder()).revisionId).toBe(workOrder.revisionId);
    await expectRefused(
      { shop, visitor: technician },
      { operation: travelerOperations.rebaseRevision, input: rebase, options: { version: workOrder.version } },
      { status: 403, type: 'not-permitted' },
    );
    const rebased = await inspector.call(travelerOperations.rebaseRevision, rebase, { version: workOrder.version });
    expect(rebased.status).toBe(200);
    const steps = await job.reads.travelerStep.findMany({
      where: { traveler: { workOrderId: job.id } },
      orderBy: { sequence: 'asc' },
      include: { measures: true },
    });
    expect(steps.map(({ sequence }) => sequence)).toEqual(steps.map((_, index) => index + 1));
    expect(steps.flatMap(({ measures }) => measures).find(({ name }) => name === 'body screw torque')?.low).toBe('60');
    expect(steps.filter(({ state }) => state === 'signed').length).toBeGreaterThan(3);
    await expectRefused(
      { shop, visitor: inspector },
      { operation: travelerOperations.rebaseRevision, input: rebase, options: { version: rebased.body.version } },
      { status: 409, type: 'revision-current' },
    );
  });

  it('nobody inspects or releases their own work', async () => {
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    const bench = await job.nextAt('assembly');
    const administrator = await actorOf(shop, 'administrator');
    const held = {
      personId: job.people.inspector.personId,
      process: 'governor-bench' as const,
      level: 'perform' as const,
      validFrom: '2026-01-01',
    };
    await shop.run(grantAuthorisation, held, administrator);
    await shop.run(signStep, await job.entryFor(bench), job.people.inspector);
    const final = await job.nextAt('assembly');
    await expectRefused(
      { shop, visitor: inspector },
      { operation: travelerOperations.signStep, input: { stepId: final.id, signature: pin } },
      { status: 409, type: 'own-inspection' },
    );
    expect((await other.call(travelerOperations.signStep, { stepId: final.id, signature: pin })).status).toBe(200);
    await expectRefused({ shop, visitor: inspector }, await approve(), { status: 409, type: 'own-inspection' });
    expect((await inspector.call(op.releaseChecklist, { workOrderId: job.id })).body.notYou).toContain(
      'someone else releases',
    );
  }, 120_000);

  it('is refused for one open thing alone: a hold, a finding, a gauge past calibration, an unread serial', async () => {
    expect((await checklist()).open).toEqual([]);
    const blockedBy = async (...kinds: string[]) => {
      const refused = await expectRefused({ shop, visitor: other }, await approve(), {
        status: 409,
        type: 'release-blocked',
      });
      expect((refused.open as { kind: string }[]).map((item) => item.kind)).toEqual(kinds);
    };
    const held = await shop.run(
      placeHold,
      { workOrderId: job.id, kind: 'customer', reason: 'asks to wait', liftedByRole: 'inspector' },
      job.people.desk,
    );
    await blockedBy('hold');
    await shop.run(liftHold, { holdId: held.holdId, reason: 'go on' }, job.people.inspector);

    const [traveler] = await job.reads.traveler.findMany({ where: { workOrderId: job.id } });
    const raised = await technician.call(findingOperations.raiseFinding, {
      ...{
        travelerId: traveler?.id ?? '',
        area: 'general',
        damage: 'nicked',
        place: 'cover',
        description: 'light handling mark',
      },
    });
    await blockedBy('finding');
    await inspector.call(
      findingOperations.disposeFinding,
      { findingId: raised.body.id, disposition: 'serviceable', signature: pin },
      { version: 1 },
    );

    const gauge = await job.reads.instrument.findFirstOrThrow({
      where: { kind: 'torque-wrench', calibrationDueOn: { gte: new Date() } },
      orderBy: { tag: 'asc' },
    });
    await owner(shop, `UPDATE instruments SET calibration_due_on = '${day(-3)}' WHERE id = '${gauge.id}'`);
    await blockedBy('instrument');
    const again = {
      instrumentId: gauge.id,
      calibratedOn: day(0),
      calibrationDueOn: day(365),
      inService: true,
      certificate: 'CC-9',
    };
    await shop.run(calibrateInstrument, again, job.people.inspector, { version: gauge.version });

    await owner(
      shop,
      `UPDATE serialized_items SET serial = NULL, provisional_name = 'unread' WHERE id = '${job.unitId}'`,
    );
    // Its kit list has lines by serial range: without the serial nobody knows whether the kit is whole.
    await blockedBy('identity', 'kit');
    await owner(
      shop,
      `UPDATE serialized_items SET serial = 'VG6001', provisional_name = NULL WHERE id = '${job.unitId}'`,
    );
    expect((await checklist()).ready).toBe(true);
  }, 60_000);

  it('says overhauled when all six facts are signed, archives the record, and restarts time since overhaul', async () => {
    const before = await checklist();
    expect(before.word).toBe('overhauled');
    expect(before.facts.filter(({ steps }) => steps.length === 0)).toEqual([]);
    const released = await other.call(
      op.approveRelease,
      { workOrderId: job.id, remarks: 'Set for the Courser.', signature: pin },
      (await approve()).options,
    );
    expect(released.body).toMatchObject({ word: 'overhauled', stage: 'released' });
    const { body } = await technician.call(op.release, { releaseId: released.body.releaseId });
    expect(body.content).toMatchObject({
      word: 'overhauled',
      dataReferences: [
        expect.stringMatching(
          /^VOM-14 revision 7, Overhaul manual, VG14 governors \(found current \d{4}-\d\d-\d\d by .+\)$/,
        ),
        'VOM-14 revision 8, Overhaul manual, VG14 governors',
      ],
      performedBy: ['Bram Ostler', 'Jory Penhallow'],
      approvedBy: {
        name: 'Sunniva Keld',
        certificateNumber: 'THAW-0001',
        certificateKind: expect.stringContaining('Repair station'),
      },
      times: { sinceOverhaul: '0.0 h', sinceNew: '2100.4 h' },
      completedOn: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
      caution: expect.stringContaining('act of the authorised person'),
    });
    expect(body.content.partsReplaced.map(({ part }) => part)).toContain('V14-11');
    await expectRefused({ shop, visitor: other }, await approve(), { status: 409, type: 'already-released' });
  });

  it('gives back the archived PDF, whose hash is in the record', async () => {
    const [release] = (await technician.call(op.listReleases, { workOrderId: job.id })).body.rows;
    const response = await fetch(`${shop.address}/api/releases/${release?.id}/pdf`, {
      headers: { cookie: technician.cookie },
    });
    expect(response.headers.get('content-type')).toContain('application/pdf');
    const bytes = Buffer.from(await response.arrayBuffer());
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(release?.fileHash);
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('counts the next due date from this overhaul, whichever of hours and calendar comes first', async () => {
    const { body } = await technician.call(dueDateOperations.nextDue, { unitId: job.unitId });
    expect(body).toMatchObject({
      lastOverhaul: { meterTenths: 28_401 },
      dueHoursTenths: 28_401 + 24_000,
      requirement: 'recommended',
      overdue: false,
    });
    expect(body.limits).toEqual([
      expect.objectContaining({ hoursTenths: 24_000, months: 72, revision: 'VOM-14 rev. 8' }),
    ]);
    const listed = await technician.call(dueDateOperations.comingDue, { days: 3660 });
    expect(listed.body.rows).toEqual([]); // still in the house
    await owner(shop, `UPDATE work_orders SET stage = 'shipped' WHERE id = '${job.id}'`);
    // No command said so, so nothing told whoever keeps due dates.
    await shop.running.app.get(KeptDue).whole();
    const shipped = await technician.call(dueDateOperations.comingDue, { days: 3660 });
    expect(shipped.body.rows.map(({ unit, customer }) => [unit.serial, customer.name])).toEqual([
      ['VG6001', 'Brackenmoor Air Charter'],
    ]);
  });
});

/** Past the commands, for what only time or a mishap brings. As the owner of the tables. */
async function owner(shop: ShopApp, text: string): Promise<void> {
  const client = new pg.Client({ connectionString: shop.databaseUrl });
  await client.connect();
  await client.query(text);
  await client.end();
}
