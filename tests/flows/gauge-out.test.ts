import { processOperations } from '@hubwright/contracts/processes/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { reviewOperations as op } from '@hubwright/contracts/work-orders/review-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { goodValues, Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const point = (asFound: string, asLeft = '1.0001') => ({ nominal: '1.0000', asFound, asLeft, allowed: '0.0005' });

describe('a gauge found out of tolerance', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let inspector: Visitor;
  let other: Visitor;
  let technician: Visitor;
  let released: Job;
  let open: Job;
  let gauge: { id: string; tag: string };
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    [inspector, other] = [await as(shop, 'inspector'), await as(shop, 'sunniva')];
    technician = await as(shop, 'technician');
    const reads = readsOf(shop);
    const model = await reads.unitModel.findFirstOrThrow({ where: { designation: 'VG14' } });
    const application = await reads.application.findFirstOrThrow({
      where: { modelId: model.id, airframe: 'Heronby Courser 4' },
    });
    const governor = { modelId: model.id, applicationId: application.id, parts: [] };
    released = await finished('VG6951', governor);
    const workOrder = await released.workOrder();
    const input = { workOrderId: released.id, signature: pin };
    const approved = await other.call(releaseOperations.approveRelease, input, { version: workOrder.version });
    expect(approved.status).toBe(200);
    open = await finished('VG6952', governor);
    const measured = await reads.signOff.findFirstOrThrow({
      where: { workOrderId: open.id, instrumentId: { not: null }, stepId: { not: null } },
    });
    const { id, tag } = await reads.instrument.findUniqueOrThrow({ where: { id: measured.instrumentId ?? '' } });
    gauge = { id, tag };
  }, 120_000);
  afterAll(() => shop.close());

  async function finished(serial: string, changes: object): Promise<Job> {
    const job = await Job.arrived(shop, serial, changes);
    await job.inWork();
    await job.signed('repair');
    await job.takenOff();
    await job.signed('build');
    await job.filled();
    await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await job.signed('final');
    return job;
  }
  const calibration = async (points: object[], changes: Record<string, unknown> = {}) => {
    const { version } = await readsOf(shop).instrument.findUniqueOrThrow({ where: { id: gauge.id } });
    const input = {
      instrumentId: gauge.id,
      ...{ calibratedOn: day(0), calibrationDueOn: day(365), inService: true, certificate: 'K-77', points },
      ...changes,
    };
    return { operation: processOperations.calibrateInstrument, input, options: { version } };
  };
  const calibrate = async (points: object[], changes: Record<string, unknown> = {}) => {
    const { operation, input, options } = await calibration(points, changes);
    return inspector.call(operation, input as never, options);
  };
  const listed = async (show: 'open' | 'all' = 'open') =>
    (await inspector.call(op.listCalibrationReviews, { instrumentId: gauge.id, show, limit: 100 })).body.rows;
  const decide = async (review: { id: string; version: number }, decision: string) => {
    const input = { reviewId: review.id, decision, reason: 'The error is a tenth of the margin', signature: pin };
    return inspector.call(op.decideCalibrationReview, input as never, { version: review.version });
  };
  const openItems = async () =>
    (await other.call(releaseOperations.releaseChecklist, { workOrderId: open.id })).body.open.map(({ what }) => what);

  it('is refused as it is entered when its readings cannot be, and nothing changes', async () => {
    const refuse = async (
      points: object[],
      refusal: { status: number; type: string; pointer?: string },
      changes: Record<string, unknown> = {},
    ) => expectRefused({ shop, visitor: inspector }, await calibration(points, changes), refusal);
    await refuse([point('25.4008')], { status: 422, type: 'reading-wrong', pointer: '/points/0/asFound' });
    await refuse([{ ...point('1.0001'), allowed: '0' }], {
      status: 422,
      type: 'reading-wrong',
      pointer: '/points/0/allowed',
    });
    await refuse([point('1.0009', '1.0009')], { status: 409, type: 'as-left-out' });
    await refuse([point('1.0009')], { status: 422, type: 'found-otherwise' }, { asFound: 'good' });
    await refuse([point('1.0001')], { status: 422, type: 'calibration-older' }, { calibratedOn: day(-900) });
    await refuse([point('about 1')], { status: 422, type: 'invalid-input', pointer: '/points/0/asFound' });
    expect((await openItems()).filter((what) => what.includes('out of tolerance'))).toEqual([]);
  });

  it('puts every sign-off made with it since it was last known good under review, in the house and released, and no other', async () => {
    const answer = await calibrate([point('1.0001'), { ...point('2.0011', '2.0002'), nominal: '2.0000' }]);
    expect(answer.body).toMatchObject({ asFound: 'out' });
    const expected = await readsOf(shop).signOff.findMany({
      where: { instrumentId: gauge.id, result: 'pass', workOrderId: { in: [open.id, released.id] } },
    });
    expect(expected.length).toBeGreaterThan(1);
    const rows = await listed();
    expect(rows).toHaveLength(answer.body.reviews);
    expect(rows.map(({ id }) => id)).toHaveLength(expected.length);
    expect(new Set(rows.map(({ workOrder }) => workOrder.number))).toEqual(new Set([open.number, released.number]));
    expect(rows.find(({ workOrder }) => workOrder.id === released.id)?.workOrder.releasedAt).not.toBeNull();
    const one = rows.find(({ workOrder, values }) => workOrder.id === open.id && values.length > 0);
    expect(one?.values[0]).toMatchObject({ name: expect.any(String), value: expect.any(String) });
    const history = await inspector.call(processOperations.listCalibrations, { instrumentId: gauge.id });
    expect(history.body.rows[0]).toMatchObject({ asFound: 'out', reviews: answer.body.reviews });
  });

  it('keeps the unit from its release until an inspector has signed what each reading means', async () => {
    const mine = (await listed()).filter(({ workOrder }) => workOrder.id === open.id);
    expect((await openItems()).filter((what) => what.includes(gauge.tag))).toHaveLength(mine.length);
    const input = { workOrderId: open.id, signature: pin };
    const { version } = await open.workOrder();
    const request = { operation: releaseOperations.approveRelease, input, options: { version } };
    await expectRefused({ shop, visitor: other }, request, { status: 409, type: 'release-blocked' });
    const [first] = mine;
    if (!first) throw new Error('Nothing is under review');
    const given = { reviewId: first.id, decision: 'stands', reason: 'x', signature: pin };
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.decideCalibrationReview, input: given, options: { version: first.version } },
      { status: 403, type: 'not-permitted' },
    );
    expect((await decide(first, 'customer-told')).body.type).toBe('/problems/unit-not-released');
    expect((await decide(first, 'stands')).status).toBe(200);
    expect((await decide({ ...first, version: 2 }, 'stands')).body.type).toBe('/problems/review-decided');
    for (const review of mine.slice(1)) expect((await decide(review, 'stands')).status).toBe(200);
    expect((await openItems()).filter((what) => what.includes(gauge.tag))).toEqual([]);
    const signOffs = await readsOf(shop).signOff.count({ where: { subjectKind: 'calibration-review' } });
    expect(signOffs).toBe(mine.length);
  });

  it('has its readings taken again with a good one: then the doubt is gone without another word', async () => {
    await calibrate([point('1.0009')]);
    const [review] = (await listed()).filter(({ workOrder, stepId }) => workOrder.id === open.id && stepId);
    if (!review) throw new Error('Nothing is under review');
    expect((await decide(review, 'measure-again')).status).toBe(200);
    expect((await openItems()).some((what) => what.endsWith('to be measured again'))).toBe(true);
    const step = await open.reads.travelerStep.findUniqueOrThrow({
      where: { id: review.stepId ?? '' },
      include: { measures: { orderBy: { sequence: 'asc' } }, signOffs: true, traveler: true },
    });
    const entry = await open.entryFor(step as never, goodValues(step));
    const { stepId: _, ...values } = entry;
    const [signOff] = step.signOffs;
    const corrected = await (step.level === 'inspect' ? inspector : technician).call(
      travelerOperations.correctSignOff,
      { ...values, signOffId: signOff?.id ?? '', reason: 'measured again' } as never,
    );
    expect(corrected.status).toBe(200);
    expect((await listed('all')).find(({ id }) => id === review.id)).toMatchObject({ measuredAgain: true });
    expect((await openItems()).some((what) => what.endsWith('to be measured again'))).toBe(false);
  });

  it('of a unit that has left, its customer is told; a good calibration since then ends what comes under review', async () => {
    const gone = (await listed()).filter(({ workOrder }) => workOrder.id === released.id);
    expect(gone.length).toBeGreaterThan(0);
    for (const review of gone) {
      expect((await decide(review, 'measure-again')).body.type).toBe('/problems/unit-released');
      expect((await decide(review, 'customer-told')).status).toBe(200);
    }
    expect((await listed()).filter(({ workOrder }) => workOrder.id === released.id)).toEqual([]);
    // Days later: found good, and a day after that out again. What was signed before the good one is beyond doubt.
    clock.seconds += 3 * 86_400;
    inspector = await as(shop, 'inspector');
    const on = (offset: number) => ({
      calibratedOn: day(offset, clock.now()),
      calibrationDueOn: day(365, clock.now()),
    });
    expect((await calibrate([point('1.0002')], on(0))).body).toMatchObject({ asFound: 'good', reviews: 0 });
    clock.seconds += 86_400;
    inspector = await as(shop, 'inspector');
    expect((await calibrate([point('1.0009')], on(0))).body).toMatchObject({ asFound: 'out', reviews: 0 });
  });
});
