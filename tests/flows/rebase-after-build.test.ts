import { travelerOperations as op } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { vexleyGovernor } from '../../seed/data/manuals/vexley-governor.ts';
import { readsOf } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('a revision that comes after the build was closed', () => {
  let shop: ShopApp;
  let job: Job;
  let inspector: Visitor;
  let changed: string;

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    inspector = await as(shop, 'inspector');
    const reads = readsOf(shop);
    const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
    const application = await reads.application.findFirstOrThrow({
      where: { modelId: model.id, airframe: 'Heronby Courser 4' },
    });
    job = await Job.arrived(shop, 'VG6501', { modelId: model.id, applicationId: application.id, parts: [] });
    await job.inWork();
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    const workOrder = await job.workOrder();
    const { manualId } = await reads.manualRevision.findUniqueOrThrow({ where: { id: workOrder.revisionId } });
    const content = vexleyGovernor();
    const signed = await reads.travelerStep.findFirstOrThrow({
      where: { traveler: { workOrderId: job.id }, phase: 'build', state: 'signed' },
      orderBy: { sequence: 'asc' },
    });
    changed = signed.title;
    const routes = content.routes.map((route) => ({
      ...route,
      steps: route.steps.map((step) =>
        step.title === changed ? { ...step, instruction: `${step.instruction} Twice.` } : step,
      ),
    }));
    const models = [{ ...content, routes, modelId: model.id }];
    const revision = { manualId, revision: '8', issuedOn: '2026-01-05', models };
    await shop.run(issueRevision, revision as never, job.people.inspector);
  }, 120_000);
  afterAll(() => shop.close());

  it('opens the build again, keeps what was signed and asks for what it changed once more', async () => {
    const { version, stage } = await job.workOrder();
    expect(stage).toBe('final-inspection');
    const seen = await inspector.call(op.revisionDifferences, { workOrderId: job.id });
    expect(seen.body).toMatchObject({
      reopensBuild: true,
      differences: [
        {
          what: changed,
          consequences: ['signed already; it stays as it was signed, and is done again by this revision'],
        },
      ],
    });
    const rebased = await inspector.call(op.rebaseRevision, { workOrderId: job.id, signature: pin }, { version });
    expect([rebased.status, rebased.body.differences]).toEqual([200, seen.body.differences]);
    expect((await job.workOrder()).stage).toBe('build');
    expect(await job.reads.kit.findUnique({ where: { id: job.kitId } })).toMatchObject({ state: 'open' });
    const steps = await job.reads.travelerStep.findMany({
      where: { traveler: { workOrderId: job.id }, title: changed },
      orderBy: { sequence: 'asc' },
      include: { signOffs: true },
    });
    expect(steps.map(({ state, signOffs }) => [state, signOffs.length])).toEqual([
      ['signed', 1],
      ['open', 0],
    ]);
    expect(steps[1]?.sequence).toBe((steps[0]?.sequence ?? 0) + 1);
  });

  it('is closed again once that was done', async () => {
    const close = { workOrderId: job.id, signature: pin };
    const technician = await as(shop, 'technician');
    expect((await technician.call(op.closeBuild, close)).body.type).toBe('/problems/build-steps-open');
    await job.signed('build');
    expect((await technician.call(op.closeBuild, close)).body).toMatchObject({ stage: 'final-inspection' });
  });
});
