import { findingOperations } from '@hubwright/contracts/findings/operations';
import { manualOperations } from '@hubwright/contracts/manuals/operations';
import type { ModelContent } from '@hubwright/contracts/manuals/revision';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { standingOf } from '@hubwright/rules/routes';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { disposeFinding } from '../../apps/server/src/modules/findings/dispose-finding.command.ts';
import { failStep } from '../../apps/server/src/modules/findings/fail-step.command.ts';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { limit, measured, work } from '../../seed/data/manuals/shapes.ts';
import { badValues, Job } from '../support/job.ts';
import { threeBladeContent } from '../support/manual-content.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep, traveler } = travelerOperations;
const found = { area: 'shank', damage: 'worn' as const, place: 'the bearing land', description: 'under size' };

/** The blade's route as this story needs it: two branches, a cure, a measurement that may be repaired once. */
const bladeSteps = [
  work('Clean', 'cleaning', 10),
  work('Look at the shank', 'non-destructive-test', 10, { branch: 'shank' }),
  measured('Measure the shank', 'dimensional-inspection', {
    ...{ standardMinutes: 5, branch: 'shank', instrumentKind: 'micrometer', mostRepairs: 1 },
    measures: [limit('shank diameter', 'in', '3.8720', '3.8760')],
  }),
  work('Look at the airfoil', 'non-destructive-test', 10, { branch: 'airfoil' }),
  work('Look for cracks after a strike', 'non-destructive-test', 10, { events: ['strike'] }),
  work('Glue the boot', 'coating', 10, { phase: 'repair', waitMinutes: 120 }),
  work('Paint', 'coating', 10, { phase: 'repair' }),
];

describe('a route with branches, a cure, steps of a strike and a bounded repair', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let technician: Visitor;
  let inspector: Visitor;
  let job: Job;
  let manualId: string;
  let modelId: string;
  let three: Awaited<ReturnType<typeof threeBladeContent>>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    [technician, inspector] = [await as(shop, 'technician'), await as(shop, 'inspector')];
    job = await Job.arrived(shop, 'QR7001', { events: ['strike'] });
    const { revisionId, modelId: model } = await job.workOrder();
    modelId = model;
    three = await threeBladeContent(shop);
    manualId = (await job.reads.manualRevision.findUniqueOrThrow({ where: { id: revisionId } })).manualId;
  }, 120_000);
  afterAll(() => shop.close());

  const contentWith = (steps: typeof bladeSteps): ModelContent =>
    ({
      ...three,
      routes: three.routes.map((route) => (route.partClass === 'blade' ? { ...route, steps } : route)),
      ...{ modelId, tboRules: [] },
    }) as never;
  const stepsAt = async (position: string) => {
    const { id } = await job.reads.traveler.findFirstOrThrow({ where: { workOrderId: job.id, position } });
    return (await technician.call(traveler, { travelerId: id })).body.steps;
  };
  const free = async (position: string) =>
    (await stepsAt(position)).filter(({ state, blocked }) => state === 'open' && !blocked).map(({ title }) => title);
  const openStep = async (position: string, title: string) => {
    const { id } = (await stepsAt(position)).findLast((step) => step.title.startsWith(title)) ?? { id: '' };
    return job.reads.travelerStep.findUniqueOrThrow({
      where: { id },
      include: { measures: { orderBy: { sequence: 'asc' } }, traveler: true },
    });
  };
  const signNow = async (position: string, title: string) => job.sign(await openStep(position, title));

  it.each<[string, typeof bladeSteps, string]>([
    ['a branch alone', bladeSteps.filter(({ branch }) => branch !== 'airfoil'), '/models/0/routes/5/steps/1/branch'],
    [
      'a phase that comes back',
      [...bladeSteps, work('Clean again', 'cleaning', 5)],
      '/models/0/routes/5/steps/7/phase',
    ],
    [
      'measured steps in one load',
      [
        measured('Measure', 'dimensional-inspection', {
          standardMinutes: 5,
          batched: true,
          measures: [limit('a', 'in', '1')],
        }),
      ],
      '/models/0/routes/5/steps/0/batched',
    ],
  ])('is refused with %s', async (_, steps, pointer) => {
    const input = { manualId, revision: '9', issuedOn: '2026-06-01', models: [contentWith(steps)] };
    const refusal = { status: 422, type: 'line-wrong', pointer };
    await expectRefused(
      { shop, visitor: inspector },
      { operation: manualOperations.issueRevision, input },
      pointer.endsWith('batched') ? { ...refusal, type: 'invalid-input' } : refusal,
    );
  });

  it('raises the strike’s step where a strike was declared, and lets branches go on side by side', async () => {
    const revision = { manualId, revision: '9', issuedOn: '2026-06-01', models: [contentWith(bladeSteps)] };
    await shop.run(issueRevision, revision, job.people.inspector);
    job = await Job.arrived(shop, 'QR7002', { events: ['strike'] });
    await job.tornDown();
    expect((await stepsAt('blade 1')).map(({ title }) => title)).toEqual(bladeSteps.map(({ title }) => title));
    expect(await free('blade 1')).toEqual(['Clean']);
    await signNow('blade 1', 'Clean');
    expect(await free('blade 1')).toEqual(['Look at the shank', 'Look at the airfoil']);
    const joint = await openStep('blade 1', 'Look for cracks');
    await expectRefused(
      { shop, visitor: technician },
      { operation: signStep, input: await job.entryFor(joint) },
      { status: 409, type: 'step-out-of-order' },
    );
    await signNow('blade 1', 'Look at the airfoil');
    expect(await free('blade 1')).toEqual(['Look at the shank']);
  });

  it('says of steps in the database what the rules say of steps in memory', async () => {
    const steps = await stepsAt('blade 1');
    const ready = standingOf(steps).filter(({ before }) => before.length === 0);
    expect(ready.map(({ id }) => steps.find((step) => step.id === id)?.title)).toEqual(await free('blade 1'));
  });

  it('asks nothing of a strike where none was declared', async () => {
    const other = await Job.arrived(shop, 'QR7003');
    await other.tornDown();
    const titles = (await other.reads.travelerStep.findMany({ where: { traveler: { workOrderId: other.id } } })).map(
      ({ title }) => title,
    );
    expect(titles).toContain('Look at the shank');
    expect(titles).not.toContain('Look for cracks after a strike');
  });

  it('repairs as often as the manual says, then only rejects', async () => {
    await signNow('blade 1', 'Look at the shank');
    const fails = async () => {
      const step = await openStep('blade 1', 'Measure the shank');
      const entry = { ...(await job.entryFor(step, badValues(step))), ...found };
      return shop.run(failStep, entry, job.signerOf(step));
    };
    const repair = (findingId: string) => ({
      findingId,
      disposition: 'repair' as const,
      steps: [{ title: 'Roll the shank', process: 'blade-repair' as const, standardMinutes: 10 }],
      signature: pin,
    });
    const first = await fails();
    await shop.run(disposeFinding, repair(first.id), job.people.inspector, { version: 1 });
    await job.signed('evaluation');
    await job.approved('firm');
    await job.sign(await openStep('blade 1', 'Roll the shank'));
    const again = (await stepsAt('blade 1')).findLast(({ title }) => title.startsWith('Measure the shank'));
    expect(again).toMatchObject({ attempt: 2, mostRepairs: 1, state: 'open' });
    const second = await fails();
    const refused = await expectRefused(
      { shop, visitor: inspector },
      { operation: findingOperations.disposeFinding, input: repair(second.id), options: { version: 1 } },
      { status: 409, type: 'repairs-used-up' },
    );
    expect(refused.detail).toContain('failed in attempt 2; the manual allows 1 repair');
  });

  it('waits until the glue has cured, whoever is in a hurry', async () => {
    await signNow('blade 2', 'Glue the boot');
    const paint = await openStep('blade 2', 'Paint');
    const input = await job.entryFor(paint);
    const early = { status: 409, type: 'still-waiting' };
    const told = await expectRefused({ shop, visitor: technician }, { operation: signStep, input }, early);
    expect(told.detail).toMatch(/ready on \d{4}-\d{2}-\d{2} \d{2}:\d{2}$/);
    clock.seconds += 119 * 60;
    await expectRefused({ shop, visitor: technician }, { operation: signStep, input }, early);
    clock.seconds += 2 * 60;
    expect(await free('blade 2')).toEqual(['Paint']);
    const before = new Date(clock.now().getTime() - 10 * 60_000).toISOString();
    await expectRefused(
      { shop, visitor: technician },
      { operation: signStep, input: { ...input, performedAt: before } },
      early,
    );
    expect((await technician.call(signStep, input)).status).toBe(200);
  });
});
