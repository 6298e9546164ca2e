import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { placeHold } from '../../apps/server/src/modules/work-orders/place-hold.command.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { startLoad, signLoad, takeOutOfLoad, listLoads } = loadOperations;

describe('a tank full of parts', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let jobs: Job[];
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'technician');
    jobs = [];
    for (const serial of ['QR8001', 'QR8002', 'QR8003', 'QR8004']) {
      const job = await Job.arrived(shop, serial);
      await job.tornDown();
      jobs.push(job);
    }
  }, 120_000);
  afterAll(() => shop.close());

  const job = (index: number) => jobs[index] as Job;
  const bladesOf = async (...of: Job[]) => {
    const steps = await Promise.all(of.flatMap((one) => [1, 2, 3].map((blade) => one.nextAt(`blade ${blade}`))));
    return steps.map(({ id }) => id);
  };
  const begin = (stepIds: string[], changes: { process?: 'coating' | 'teardown' } = {}) => ({
    process: 'cleaning' as const,
    equipment: 'Strip tank 1',
    stepIds,
    ...changes,
  });
  const open = async () => (await technician.call(listLoads, { state: 'open', limit: 50 })).body.rows;
  const refused = (input: ReturnType<typeof begin>, type: string, options = {}) =>
    expectRefused({ shop, visitor: technician }, { operation: startLoad, input, options }, { status: 409, type });

  it('takes twelve blades of four customers’ units into one load', async () => {
    const answer = await technician.call(startLoad, begin(await bladesOf(...jobs)));
    expect([answer.status, answer.body.number]).toEqual([200, 'LD-0001']);
    const [load] = await open();
    expect(load).toMatchObject({ equipment: 'Strip tank 1', state: 'open', version: 1 });
    expect(load?.parts.map(({ workOrderNumber, blocked }) => [workOrderNumber, blocked])).toEqual(
      jobs.flatMap(({ number }) => Array.from({ length: 3 }, () => [number, null])),
    );
  });

  it('takes no part twice, and none of it is signed alone meanwhile', async () => {
    const [stepId = ''] = await bladesOf(job(0));
    await refused(begin([stepId]), 'in-other-load');
    await expectRefused(
      { shop, visitor: technician },
      { operation: travelerOperations.signStep, input: { stepId, values: [], signature: pin } },
      { status: 409, type: 'in-other-load' },
    );
  });

  it('takes no part that is not ready, is not for a load, or is for another process', async () => {
    const second = await job(0).reads.travelerStep.findFirstOrThrow({
      where: { traveler: { workOrderId: job(0).id, position: 'blade 1' }, title: 'Conversion coat' },
    });
    await refused(begin([second.id], { process: 'coating' }), 'step-out-of-order');
    await refused(begin([second.id]), 'load-mixed');
    const hub = await job(0).nextAt('assembly');
    await refused(begin([hub.id], { process: 'teardown' }), 'not-batched');
  });

  it('lets a part be taken out, and does nothing when the page is behind', async () => {
    const [load] = await open();
    const stepId = load?.parts[0]?.stepId ?? '';
    const input = { loadId: load?.id ?? '', stepId, reason: 'decal left on it' };
    await expectRefused(
      { shop, visitor: technician },
      { operation: takeOutOfLoad, input, options: { version: 9 } },
      { status: 412, type: 'out-of-date' },
    );
    const answer = await technician.call(takeOutOfLoad, input, { version: 1 });
    expect(answer.body).toMatchObject({ version: 2, state: 'open' });
    expect((await open())[0]?.parts).toHaveLength(11);
    const signed = await technician.call(travelerOperations.signStep, { stepId, values: [], signature: pin });
    expect(signed.status).toBe(200);
  });

  it('is signed whole or not at all: a unit put on hold stops it, by name', async () => {
    const held = {
      workOrderId: job(3).id,
      kind: 'customer' as const,
      reason: 'owner disputes the strip',
      liftedByRole: 'manager' as const,
    };
    await shop.run(placeHold, held, await actorOf(shop, 'manager'));
    const [load] = await open();
    expect(load?.parts.filter(({ blocked }) => blocked?.includes('owner disputes'))).toHaveLength(3);
    const problem = await expectRefused(
      { shop, visitor: technician },
      { operation: signLoad, input: { loadId: load?.id ?? '', signature: pin }, options: { version: 2 } },
      { status: 409, type: 'work-held' },
    );
    expect(problem.detail).toContain(job(3).number);
  });

  it('is one act: one entry, a sign-off on each traveler that names the load', async () => {
    const [before] = await open();
    let version = 2;
    for (const part of before?.parts.filter(({ workOrderId }) => workOrderId === job(3).id) ?? []) {
      const out = { loadId: before?.id ?? '', stepId: part.stepId, reason: 'its unit is on hold' };
      version = (await technician.call(takeOutOfLoad, out, { version })).body.version;
    }
    const answer = await technician.call(signLoad, { loadId: before?.id ?? '', signature: pin }, { version });
    expect(answer.status).toBe(200);
    const signOffs = await job(0).reads.signOff.findMany({ where: { id: { in: answer.body.signOffIds } } });
    expect(signOffs).toHaveLength(8);
    expect(new Set(signOffs.map(({ entryId }) => entryId)).size).toBe(1);
    expect(JSON.parse(signOffs[0]?.content ?? '')).toMatchObject({
      load: { number: 'LD-0001', equipment: 'Strip tank 1' },
    });
    expect(await open()).toEqual([]);
    expect((await job(1).nextAt('blade 2')).title).toBe('Penetrant test, whole blade');
  });

  it('ends when the last part is out', async () => {
    const [stepId = ''] = await bladesOf(job(2));
    const hub = await job(2).nextAt('hub');
    const load = (await technician.call(startLoad, begin([hub.id]))).body;
    expect(stepId).not.toBe('');
    const out = { loadId: load.id, stepId: hub.id, reason: 'tank too cold' };
    expect((await technician.call(takeOutOfLoad, out, { version: 1 })).body.state).toBe('broken-up');
    await expectRefused(
      { shop, visitor: technician },
      { operation: signLoad, input: { loadId: load.id, signature: pin }, options: { version: 2 } },
      { status: 409, type: 'load-ended' },
    );
  });
});
