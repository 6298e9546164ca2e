import { kitsOperations as kits } from '@hubwright/contracts/kits/operations';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { reopenOperations } from '@hubwright/contracts/work-orders/reopen-operations';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { atTheAngles } from '../support/at-the-angles.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep, traveler: travelerOp, closeBuild } = travelerOperations;
const { reopenBuild, reopening, shopCost } = reopenOperations;

describe('a failed test of a built propeller', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let clerk: Visitor;
  let job: Job;
  let travelerId: string;
  let entry: Awaited<ReturnType<Job['entryFor']>>;
  const own = async () => (await technician.call(travelerOp, { travelerId })).body;
  const open = async () => (await own()).steps.filter(({ state }) => state === 'open').map(({ title }) => title);
  const next = () => job.nextAt('assembly');

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [technician, clerk] = [await as(shop, 'technician'), await as(shop, 'parts-room')];
    job = await atTheAngles(shop, 'QA8801');
    const step = await next();
    travelerId = step.travelerId;
    await job.sign(step);
  }, 180_000);
  afterAll(() => shop.close());

  const refused = (
    input: Record<string, unknown>,
    type: string,
    at: { status?: number; pointer?: string; operation?: typeof signStep | typeof reopenBuild; visitor?: Visitor } = {},
  ) =>
    expectRefused(
      { shop, visitor: at.visitor ?? technician },
      { operation: (at.operation ?? signStep) as typeof signStep, input: { ...entry, ...input } },
      { status: at.status ?? 422, type, ...(at.pointer ? { pointer: at.pointer } : {}) },
    );
  const leaking = async (lost = '9.5') => {
    const good = await job.entryFor(await next());
    const test = good.sheet as EntryOf<'function-test'>;
    const values = test.values.map((one) => (one.of === 'leak/lost' ? { ...one, value: lost } : one));
    return { ...good, sheet: { ...test, values } };
  };

  it('a leak test with another medium, too few cycles or a negative time is none', async () => {
    entry = await leaking('1');
    const test = entry.sheet as EntryOf<'function-test'>;
    await refused({ sheet: { ...test, medium: 'oil' } }, 'sheet-wrong', { pointer: '/sheet/medium' });
    await refused({ sheet: { ...test, cycles: 2 } }, 'sheet-wrong', { pointer: '/sheet/cycles' });
    const minutes = test.values.findIndex(({ of }) => of === 'leak/minutes');
    const values = test.values.map((one, index) => (index === minutes ? { ...one, value: '-10' } : one));
    await refused({ sheet: { ...test, values } }, 'sheet-wrong', { pointer: `/sheet/values/${minutes}/value` });
  });

  it('a failed one offers the seals its joint touches and the steps of the build, and is refused with what cannot be', async () => {
    entry = await leaking();
    const offered = (await technician.call(reopening, { stepId: entry.stepId })).body;
    expect(offered.steps.map(({ title, offered: is }) => [title, is])).toEqual([
      ['Assemble hub, pitch change and blades', true],
      ['Torque hub nuts and stop', true],
      ['Torque clamp nuts', true],
      ['Grease the blades', true],
      ['Set blade angles', true],
    ]);
    const seals = new Map(offered.seals.map((seal) => [seal.position, seal.offered]));
    expect([seals.get('blade 1 shank O-ring'), seals.get('mounting face O-ring')]).toEqual([true, false]);
    const plan = { reason: 'air at the shank of blade 2', repeat: [], seals: [] };
    const at = { operation: reopenBuild } as const;
    await refused({ ...plan, repeat: [entry.stepId] }, 'not-repeatable', { ...at, pointer: '/repeat/0' });
    const washer = await job.reads.kitLine.findFirstOrThrow({ where: { kitId: job.kitId, position: 'hub nuts' } });
    await refused({ ...plan, seals: [washer.id] }, 'seal-not-in-unit', { ...at, status: 409, pointer: '/seals/0' });
    await refused({ ...plan, reason: '' }, 'invalid-input', { ...at, pointer: '/reason' });
    const good = (await leaking('1')).sheet;
    await refused({ ...plan, sheet: good }, 'inside-limits', { ...at, status: 409 });
    await refused(plan, 'not-permitted', { ...at, status: 403, visitor: clerk });
  });

  let chosen: { lineId: string; quantity: number; cost: { minor: number } }[];
  it('signed as failed, it opens the build behind what is signed; the seals are scrapped and asked for at the shop’s cost', async () => {
    const offered = (await technician.call(reopening, { stepId: entry.stepId })).body;
    chosen = offered.seals.filter((seal) => seal.offered);
    const again = offered.steps
      .filter(({ title }) => /^Assemble|^Torque clamp/.test(title))
      .map(({ stepId }) => stepId);
    const input = {
      ...entry,
      reason: 'air at the shank of blade 2',
      repeat: again,
      seals: chosen.map((one) => one.lineId),
    };
    const { status, body } = await technician.call(reopenBuild, input);
    expect([status, body]).toEqual([200, body]);
    const pieces = chosen.reduce((sum, { quantity }) => sum + quantity, 0);
    const cost = chosen.reduce((sum, one) => sum + one.cost.minor, 0);
    expect(body).toMatchObject({ stage: 'build', seals: pieces, cost: { minor: cost } });
    expect(cost).toBeGreaterThan(0);
    expect((await open()).slice(0, 4)).toEqual([
      'Assemble hub, pitch change and blades, again after the failed leak test',
      'Torque clamp nuts, again after the failed leak test',
      'Leak test, again after the failed leak test',
      'Play, friction and travel',
    ]);
    const scrapped = await job.reads.movement.findMany({
      where: { fromKind: 'unit', fromRef: job.id, toKind: 'scrap', kitLineId: { in: chosen.map((one) => one.lineId) } },
    });
    expect(scrapped.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(pieces);
    const failed = (await own()).steps.find(({ id }) => id === entry.stepId);
    expect(failed).toMatchObject({ state: 'failed', signOffs: [{ result: 'fail' }] });
  });

  it('the parts room sees why new ones are asked for and who pays; the customer is charged for each line once', async () => {
    const kit = (await clerk.call(kits.kitDetail, { kitId: job.kitId })).body;
    const lines = kit.lines.filter(({ id }) => chosen.some(({ lineId }) => lineId === id));
    expect(lines.map(({ toPull, shopPays }) => [toPull, shopPays])).toEqual(
      lines.map(({ quantity }) => [quantity, quantity]),
    );
    const short = (await clerk.call(kits.shortages, { limit: 200 })).body.rows.flatMap(({ sentences }) => sentences);
    const shorts = lines.filter((line) => line.short > 0);
    for (const line of shorts)
      expect(
        short.some((sentence) => sentence.includes(line.position) && sentence.includes('at the shop’s cost')),
      ).toBe(true);
    const cost = (await technician.call(shopCost, { workOrderId: job.id })).body;
    expect(cost.rows).toHaveLength(chosen.length);
    expect(cost.total.minor).toBe(chosen.reduce((sum, one) => sum + one.cost.minor, 0));
    expect(cost.rows[0]).toMatchObject({ cause: '“Leak test” failed', reason: 'air at the shank of blade 2' });
    const charged = await job.reads.quoteLine.findMany({ where: { quote: { workOrderId: job.id, kind: 'firm' } } });
    const desk = await as(shop, 'front-desk');
    const extra = await desk.call(quoteOperations.writeQuote, { workOrderId: job.id, kind: 'over-and-above' });
    expect([extra.status, extra.body]).toMatchObject([409, { type: '/problems/nothing-to-quote' }]);
    expect(await job.reads.quoteLine.count({ where: { quote: { workOrderId: job.id, kind: 'firm' } } })).toBe(
      charged.length,
    );
  });

  const built = { signature: pin };
  it('the build does not close before the seals are in and the steps signed; then it does', async () => {
    const shut = () => technician.call(closeBuild, { workOrderId: job.id, ...built });
    expect((await shut()).body).toMatchObject({ type: '/problems/build-steps-open' });
    await job.signed('build');
    expect((await shut()).body).toMatchObject({ type: '/problems/build-not-closed' });
    for (const { lineId, quantity } of chosen) {
      const { partId } = await job.reads.kitLine.findUniqueOrThrow({ where: { id: lineId } });
      const lotCode = await job.onShelf(partId, quantity);
      expect((await clerk.call(kits.issueLot, { kitId: job.kitId, lineId, lotCode })).status).toBe(200);
      expect((await technician.call(kits.installFromTray, { kitId: job.kitId, lineId, lotCode })).status).toBe(200);
    }
    expect(await shut()).toMatchObject({ status: 200, body: { stage: 'final-inspection' } });
  });

  it('a test found wrong after the build was closed opens it, kits included, and no inspection before it counts any more', async () => {
    await job.signed('final');
    expect(await open()).toEqual([]);
    const test = (await own()).steps.findLast(({ title }) => title.startsWith('Leak test'));
    const step = await job.reads.travelerStep.findUniqueOrThrow({
      where: { id: test?.id ?? '' },
      include: { measures: true, traveler: true },
    });
    const good = await job.entryFor(step as never);
    const values = (good.sheet as EntryOf<'function-test'>).values.map((one) =>
      one.of === 'leak/lost' ? { ...one, value: '12' } : one,
    );
    const sheet = { ...(good.sheet as EntryOf<'function-test'>), values };
    const input = { ...good, sheet, reason: 'the gauge was isolated', repeat: [], seals: [] };
    const { status, body } = await technician.call(reopenBuild, input);
    expect([status, body]).toMatchObject([200, { stage: 'build', seals: 0, cost: { minor: 0 } }]);
    expect(await open()).toEqual([
      'Leak test, again after the failed leak test',
      'Final inspection, again after the failed leak test',
    ]);
    expect((await job.reads.kit.findUniqueOrThrow({ where: { id: job.kitId } })).state).toBe('open');
    const signOffs = (await own()).steps.find(({ id }) => id === step.id)?.signOffs ?? [];
    expect(signOffs.map(({ result, supersededById }) => [result, supersededById !== null])).toEqual([
      ['pass', true],
      ['fail', false],
    ]);
  });

  it('fails as often as the manual allows a repair, and then an inspector decides on a finding', async () => {
    entry = await leaking();
    const plan = { reason: 'it leaks on', repeat: [], seals: [] };
    const refusal = { operation: reopenBuild, status: 409 } as const;
    expect((await refused(plan, 'repairs-used-up', refusal)).detail).toContain('attempt 3');
  });

  it('what is no test of the unit opens no build', async () => {
    const other = await Job.arrived(shop, 'QA8802');
    await other.tornDown();
    entry = await other.entryFor(await other.nextAt('blade 1'));
    await refused({ reason: 'it leaks', repeat: [], seals: [] }, 'no-build-test', {
      operation: reopenBuild,
      status: 409,
    });
  });
});
