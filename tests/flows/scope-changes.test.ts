import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { scopeOperations as op } from '@hubwright/contracts/work-orders/scope-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { placeHold } from '../../apps/server/src/modules/work-orders/place-hold.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { type Arrival, readsOf } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused, tableHashes } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

type Asked = {
  scope: 'overhaul' | 'reseal' | 'strike-inspection' | 'balance-only' | 'governor' | 'inspect-and-repair';
};

describe('a change of scope', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let other: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, other] = [await as(shop, 'inspector'), await as(shop, 'sunniva')];
  });
  afterAll(() => shop.close());

  async function governorArrival(): Promise<Partial<Arrival>> {
    const reads = readsOf(shop);
    const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
    const application = await reads.application.findFirstOrThrow({
      where: { modelId: model.id, airframe: 'Heronby Courser 4' },
    });
    return { modelId: model.id, applicationId: application.id, parts: [] };
  }
  const request = async (job: Job, given: Asked & { events?: 'strike'[]; hiddenDamage?: string }) => ({
    operation: op.changeScope,
    input: { workOrderId: job.id, events: [], reason: 'the customer asked for it', ...given, signature: pin },
    options: { version: (await job.workOrder()).version },
  });
  const change = async (job: Job, given: Parameters<typeof request>[1], options: { dryRun?: boolean } = {}) => {
    const sent = await request(job, given);
    return inspector.call(sent.operation, sent.input, { ...sent.options, ...options });
  };
  const titles = async (job: Job, position: string) =>
    (
      await job.reads.travelerStep.findMany({
        where: { traveler: { workOrderId: job.id, position }, state: { not: 'not-needed' } },
        orderBy: { sequence: 'asc' },
      })
    ).map(({ title }) => title);

  it('from reseal to overhaul brings its steps, its kit, its words and its effect on times; shown before signing as it happens', async () => {
    const job = await Job.arrived(shop, '4801', { scope: 'reseal' });
    await job.tornDown();
    const [first] = await job.nextSteps();
    if (first) await job.sign(first);
    expect(await titles(job, 'blade 1')).toEqual(['Look over blade and shank']);
    const before = await tableHashes(shop.databaseUrl);
    const asked = { workOrderId: job.id, scope: 'overhaul' as const };
    const shown = await inspector.call(op.scopeDifferences, asked);
    const tried = await change(job, { scope: 'overhaul' }, { dryRun: true });
    expect(await tableHashes(shop.databaseUrl)).toEqual(before);
    const done = await change(job, { scope: 'overhaul' });
    expect(done.status).toBe(200);
    expect(tried.body).toEqual(done.body);
    expect(shown.body.differences).toEqual(done.body.differences);

    const said = done.body.differences.map(({ area, what, before: was, after }) => [area, what, was, after]);
    expect(said).toEqual(
      expect.arrayContaining([
        ['scope', 'Scope', 'Reseal', 'Overhaul'],
        ['scope', 'What the record may say at most', 'repaired', 'overhauled'],
        ['scope', 'Time since overhaul', 'goes on', 'starts again at the release'],
        ['step', 'Look over blade and shank', expect.any(String), null],
        ['step', 'Measure shank and retention', null, expect.any(String)],
      ]),
    );
    expect(done.body.differences.some(({ area, change: kind }) => area === 'kit' && kind === 'added')).toBe(true);
    expect(await titles(job, 'blade 1')).toContain('Measure shank and retention');
    expect(await titles(job, 'blade 1')).not.toContain('Look over blade and shank');
    const signed = await job.reads.travelerStep.findUniqueOrThrow({ where: { id: first?.id ?? '' } });
    expect(signed.state).toBe('signed');
    expect(await job.workOrder()).toMatchObject({
      scope: 'overhaul',
      stage: 'teardown',
      consent: 'evaluation-approved',
    });

    await job.signed('evaluation');
    await job.approved('firm');
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await job.signed('final');
    const checklist = await other.call(releaseOperations.releaseChecklist, { workOrderId: job.id });
    expect(checklist.body).toMatchObject({ ready: true, word: 'overhauled' });
  }, 120_000);

  it('to an event declared in the midst of work sends the unit back to the customer: nothing is done before a new yes', async () => {
    const governor = await Job.arrived(shop, 'VG6802', await governorArrival());
    const job = await Job.arrived(shop, '4802');
    await job.inWork();
    const firm = await job.reads.quote.findFirstOrThrow({ where: { workOrderId: job.id, kind: 'firm' } });
    const strike = { scope: 'strike-inspection', events: ['strike'] } as const;
    const given = { ...strike, events: [...strike.events] };
    await expectRefused({ shop, visitor: inspector }, await request(job, given), {
      status: 422,
      type: 'hidden-damage-unsaid',
      pointer: '/hiddenDamage',
    });
    const shown = await inspector.call(op.scopeDifferences, {
      workOrderId: job.id,
      scope: strike.scope,
      events: 'strike',
    });
    expect(shown.body).toMatchObject({ needsHiddenDamage: true });
    const done = await change(job, { ...given, hiddenDamage: 'Roots and arms under light: nothing found' });
    expect(done.status).toBe(200);
    expect(done.body.prompts.join(' ')).toMatch(/engine and governor/);
    expect(done.body.prompts.join(' ')).toContain(governor.number);
    expect(await titles(job, 'hub')).toContain('Magnetic particle test, arms, after the event');
    expect(await titles(job, 'blade 1')).toContain('Measure bend');
    expect(await job.workOrder()).toMatchObject({ stage: 'inspected', consent: 'quote-due', events: ['strike'] });
    expect(await job.reads.quote.findUniqueOrThrow({ where: { id: firm.id } })).toMatchObject({ state: 'superseded' });

    const repair = await job.reads.travelerStep.findFirstOrThrow({
      where: { traveler: { workOrderId: job.id, position: 'assembly' }, phase: 'repair', state: 'open' },
      include: { measures: true, traveler: true },
    });
    await job.signed('evaluation');
    const entry = await job.entryFor(repair);
    await expect(shop.run(signStep, entry, job.people.technician)).rejects.toMatchObject({ type: 'consent-missing' });
    await job.approved('firm');
    expect(await job.workOrder()).toMatchObject({ stage: 'in-work', consent: 'approved' });
    await job.signed('repair');
  }, 120_000);

  it('to less than an overhaul after the build was closed opens it again, and the record says no more than the new scope', async () => {
    const job = await Job.arrived(shop, 'VG6803', await governorArrival());
    await job.inWork();
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await job.signed('final');
    const done = await change(job, { scope: 'inspect-and-repair' });
    expect(done.body).toMatchObject({ reopensBuild: true });
    expect(await job.workOrder()).toMatchObject({ stage: 'inspected', consent: 'quote-due' });
    expect(await job.reads.kit.findFirstOrThrow({ where: { workOrderId: job.id } })).toMatchObject({ state: 'open' });
    const early = shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await expect(early).rejects.toMatchObject({ type: 'wrong-state' });
    await job.approved('firm');
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    const checklist = await other.call(releaseOperations.releaseChecklist, { workOrderId: job.id });
    expect(checklist.body).toMatchObject({ ready: true, word: 'repaired' });
  }, 120_000);

  it('is refused, with the reason and nothing changed, where it makes no sense', async () => {
    const job = await Job.arrived(shop, '4804', { scope: 'strike-inspection', events: ['strike'] });
    const refuse = async (
      given: Parameters<typeof request>[1],
      refusal: { status: number; type: string },
      visitor = inspector,
    ) => expectRefused({ shop, visitor }, await request(job, given), refusal);
    await refuse({ scope: 'strike-inspection', events: ['strike'] }, { status: 409, type: 'scope-unchanged' });
    await refuse({ scope: 'reseal', events: ['strike'] }, { status: 409, type: 'scope-refused' });
    await refuse({ scope: 'balance-only', events: ['strike'] }, { status: 409, type: 'scope-refused' });
    await refuse({ scope: 'governor' }, { status: 409, type: 'scope-refused' });
    const technician = await as(shop, 'technician');
    await refuse({ scope: 'overhaul', events: ['strike'] }, { status: 403, type: 'not-permitted' }, technician);
    const stale = await request(job, { scope: 'overhaul', events: ['strike'] });
    const visitor = { shop, visitor: inspector };
    await expectRefused(visitor, { ...stale, options: { version: 1 } }, { status: 412, type: 'out-of-date' });
    const wrong = { ...stale, input: { ...stale.input, signature: { pin: '9999' } } };
    await expectRefused(visitor, wrong, { status: 403, type: 'signature-refused' });
    const hold = {
      workOrderId: job.id,
      kind: 'customer',
      reason: 'the owner decides',
      liftedByRole: 'front-desk',
    } as const;
    await shop.run(placeHold, hold, job.people.desk);
    await refuse({ scope: 'overhaul', events: ['strike'] }, { status: 409, type: 'work-held' });
  }, 60_000);
});
