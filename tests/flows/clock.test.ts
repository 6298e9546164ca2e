import { clockOperations as op } from '@hubwright/contracts/work-orders/clock-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startLoad } from '../../apps/server/src/modules/work-orders/start-load.command.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const minute = 60;
const hour = 3_600;

describe('the clock of a person', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let technician: Visitor;
  let manager: Visitor;
  let other: Visitor;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    job = await Job.arrived(shop, '4860');
    await job.tornDown();
    await signIn();
  }, 120_000);
  afterAll(() => shop.close());

  const signIn = async () => {
    [technician, manager, other] = [await as(shop, 'technician'), await as(shop, 'manager'), await as(shop, 'tobit')];
  };
  const mine = async (visitor = technician) => (await visitor.call(op.myClock, {})).body;
  const start = (given: Record<string, unknown>) => technician.call(op.startClock, given as never);
  const iso = (secondsFromNow: number) => new Date(clock.now().getTime() + secondsFromNow * 1000).toISOString();

  it('begins with a scan of a step and goes on to the next: each ends where the other begins', async () => {
    const [one, two] = [await job.nextAt('blade 1'), await job.nextAt('blade 2')];
    expect((await start({ stepId: one.id })).status).toBe(200);
    expect(await mine()).toMatchObject({
      running: { kind: 'job', step: { id: one.id, workOrder: job.number }, endedAt: null, minutes: null },
    });
    clock.seconds += 25 * minute;
    await start({ stepId: two.id });
    clock.seconds += 10 * minute;
    await start({ kind: 'indirect', note: 'sweeping' });
    clock.seconds += 5 * minute;
    expect((await technician.call(op.stopClock, {})).status).toBe(200);
    const { running, today, minutes } = await mine();
    expect(running).toBeNull();
    expect(today.map(({ kind, minutes: worked }) => [kind, worked])).toEqual([
      ['job', 25],
      ['job', 10],
      ['indirect', 5],
    ]);
    expect(today[0]?.endedAt).toBe(today[1]?.startedAt);
    expect(minutes.filter((row) => row.minutes > 0)).toEqual([
      { kind: 'job', minutes: 35 },
      { kind: 'indirect', minutes: 5 },
    ]);
    expect((await mine(other)).today).toEqual([]);
  });

  it('that was forgotten is named at the next scan, and mended by its person with the reason; both entries stay', async () => {
    const step = await job.nextAt('blade 3');
    await start({ stepId: step.id });
    clock.seconds += 13 * hour;
    await signIn();
    const [forgotten] = (await mine()).forgotten;
    expect(forgotten).toMatchObject({ forgotten: true, step: { id: step.id } });
    expect((await mine()).running).toBeNull();
    expect((await start({ stepId: step.id })).body.type).toBe('/problems/clock-forgotten');
    expect((await technician.call(op.stopClock, {})).body.type).toBe('/problems/clock-forgotten');
    const listed = await manager.call(op.listTimes, { forgotten: 'yes' });
    expect(listed.body.rows.map(({ id }) => id)).toEqual([forgotten?.id]);
    const given = {
      entryId: forgotten?.id ?? '',
      startedAt: forgotten?.startedAt ?? '',
      endedAt: new Date(Date.parse(forgotten?.startedAt ?? '') + 40 * minute * 1000).toISOString(),
      reason: 'left without scanning out',
    };
    await expectRefused(
      { shop, visitor: other },
      { operation: op.mendTime, input: given, options: { version: forgotten?.version ?? 0 } },
      { status: 403, type: 'not-your-time' },
    );
    const mended = await technician.call(op.mendTime, given, { version: forgotten?.version ?? 0 });
    expect(mended.body).toMatchObject({ supersedes: forgotten?.id });
    const rows = (await manager.call(op.listTimes, { workOrderId: job.id })).body.rows;
    expect(rows[0]).toMatchObject({
      id: mended.body.id,
      minutes: 40,
      mended: true,
      lateReason: given.reason,
      enteredBy: null,
    });
    expect(await job.reads.clockEntry.count({ where: { id: forgotten?.id ?? '' } })).toBe(1);
    const again = { operation: op.mendTime, input: given, options: { version: 2 } };
    await expectRefused({ shop, visitor: technician }, again, { status: 409, type: 'time-mended' });
  });

  it('that nobody started is entered afterwards, and a manager mends anyone’s: who did stands beside it', async () => {
    const step = await job.nextAt('hub');
    const late = {
      kind: 'redo',
      stepId: step.id,
      startedAt: iso(-3 * hour),
      endedAt: iso(-2 * hour),
      reason: 'tablet was flat',
    };
    const entered = await technician.call(op.enterTime, late as never);
    expect(entered.status).toBe(200);
    const shorter = {
      entryId: entered.body.id,
      startedAt: late.startedAt,
      endedAt: iso(-2.5 * hour),
      reason: 'as he told me',
    };
    const mended = await manager.call(op.mendTime, shorter, { version: 1 });
    const rows = (await manager.call(op.listTimes, { workOrderId: job.id, limit: 50 })).body.rows;
    expect(rows.find(({ id }) => id === mended.body.id)).toMatchObject({
      minutes: 30,
      kind: 'redo',
      enteredBy: 'Hester Quayle',
    });
  });

  it('runs for a whole load at once, and its minutes are shared by the parts in it', async () => {
    const steps = [await job.nextAt('blade 1'), await job.nextAt('blade 2'), await job.nextAt('blade 3')];
    expect(steps.every(({ batched }) => batched)).toBe(true);
    const load = { process: 'cleaning', equipment: 'Tank 1', stepIds: steps.map(({ id }) => id) };
    const begun = await shop.run(startLoad, load as never, job.people.technician);
    await start({ stepId: steps[0]?.id });
    expect((await mine()).running).toMatchObject({ load: begun.number });
    clock.seconds += 30 * minute;
    await technician.call(op.stopClock, {});
    const { rows } = (await manager.call(op.realTimes, { workOrderId: job.id })).body;
    // Nothing is signed yet: there is nothing to compare a standard time with.
    expect(rows).toEqual([]);
  });

  it('is refused, with the reason and nothing changed, where it cannot be', async () => {
    const step = await job.nextAt('assembly');
    const refuse = (
      operation: typeof op.startClock | typeof op.enterTime | typeof op.stopClock,
      input: Record<string, unknown>,
      refusal: { status: number; type: string; pointer?: string },
      visitor = technician,
    ) => expectRefused({ shop, visitor }, { operation: operation as typeof op.enterTime, input }, refusal);
    const time = (from: number, to: number) => ({ startedAt: iso(from), endedAt: iso(to), reason: 'late' });
    const job1 = { kind: 'job', stepId: step.id };
    await refuse(op.stopClock, {}, { status: 409, type: 'clock-not-running' });
    await refuse(op.startClock, { kind: 'job' }, { status: 422, type: 'step-needed', pointer: '/stepId' });
    await refuse(op.startClock, { kind: 'training', stepId: step.id }, { status: 422, type: 'step-has-none' });
    await refuse(op.startClock, { kind: 'job', stepId: job.id }, { status: 404, type: 'not-found' });
    await refuse(op.enterTime, { ...job1, ...time(-hour, hour) }, { status: 422, type: 'time-ahead' });
    await refuse(op.enterTime, { ...job1, ...time(-hour, -2 * hour) }, { status: 422, type: 'time-backwards' });
    await refuse(op.enterTime, { ...job1, ...time(-48 * hour, -20 * hour) }, { status: 422, type: 'time-too-long' });
    await refuse(op.enterTime, { ...job1, ...time(-20 * minute, -minute) }, { status: 409, type: 'clock-overlap' });
    const desk = await as(shop, 'front-desk');
    await refuse(op.startClock, job1, { status: 403, type: 'not-permitted' }, desk);
    await start(job1);
    await refuse(op.startClock, job1, { status: 409, type: 'clock-runs-already' });
  });

  it('of two scans at the same moment runs on one', async () => {
    const [one, two] = [await job.nextAt('blade 1'), await job.nextAt('hub')];
    const answers = await Promise.all([one, two, one, two].map(({ id }) => start({ stepId: id })));
    expect(answers.some(({ status }) => status === 200)).toBe(true);
    expect(await job.reads.clockEntry.count({ where: { endedAt: null, stands: true } })).toBe(1);
  });

  it('tells real hours against standard ones, by process, once the steps are signed', async () => {
    await technician.call(op.stopClock, {});
    const step = await job.nextAt('assembly');
    await start({ stepId: step.id });
    clock.seconds += 55 * minute;
    await technician.call(op.stopClock, {});
    await job.sign(step);
    const answer = await manager.call(op.realTimes, { workOrderId: job.id });
    expect(answer.body).toMatchObject({ rows: expect.anything() });
    const { rows } = answer.body;
    expect(rows).toEqual([
      expect.objectContaining({ process: 'teardown', steps: 1, standardMinutes: step.standardMinutes, redoMinutes: 0 }),
    ]);
    expect(rows[0]?.realMinutes).toBeGreaterThanOrEqual(55);
  });
});
