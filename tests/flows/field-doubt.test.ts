import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import { fieldReviewOperations as reviewOp } from '@hubwright/contracts/field-balance/review-operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { FieldOrder } from '../support/field-order.ts';
import type { Job } from '../support/job.ts';
import { installed } from '../support/on-aircraft.ts';
import { pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp } from '../support/shop-app.ts';

/** Orders that rest on a vibration analyser which then came back wrong. */
describe('an analyser found out of tolerance', () => {
  let shop: ShopApp;
  let job: Job;
  let abandoned: FieldOrder;
  let released: FieldOrder;
  let signed: FieldOrder;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    job = await installed(shop, 'F7501');
    abandoned = await FieldOrder.planned(shop, job);
    await abandoned.setUp();
    await abandoned.abandoned();
    released = await balanced();
    await released.released();
    signed = await balanced();
  }, 180_000);
  afterAll(() => shop.close());

  async function balanced(): Promise<FieldOrder> {
    const order = await FieldOrder.planned(shop, job);
    await order.setUp();
    await order.baseline();
    await order.balanced();
    return order;
  }
  const calibrate = async (asFound: string) => {
    const { instrumentId } = released;
    const { version } = await readsOf(shop).instrument.findUniqueOrThrow({ where: { id: instrumentId } });
    const points = [{ nominal: '0.500', asFound, asLeft: '0.500', allowed: '0.010' }];
    const dates = { calibratedOn: day(0), calibrationDueOn: day(365) };
    const input = { instrumentId, ...dates, inService: true, certificate: 'K-90', points };
    const answer = await released.people.inspector.call(processOperations.calibrateInstrument, input, { version });
    expect([answer.status, answer.body.detail]).toEqual([200, undefined]);
    return answer.body;
  };
  const listed = async (show: 'open' | 'all' = 'open') => {
    const asked = { instrumentId: released.instrumentId, show };
    return (await released.people.technician.call(reviewOp.listFieldReviews, asked)).body.rows;
  };
  const reviewOf = async (order: FieldOrder) => {
    const [review] = (await listed()).filter(({ fieldBalance }) => fieldBalance.id === order.id);
    if (!review) throw new Error(`${order.number} is not under review`);
    return review;
  };
  const deciding = async (order: FieldOrder, decision: string, changes: object = {}) => {
    const { id: reviewId, version } = await reviewOf(order);
    const reason = 'The error is a tenth of the margin';
    const input = { fieldBalanceId: order.id, reviewId, decision, reason, signature: pin, ...changes };
    return { operation: reviewOp.decideFieldReview, input, options: { version } };
  };
  const decide = async (order: FieldOrder, decision: string) => {
    const { operation, input, options } = await deciding(order, decision);
    const answer = await order.people.inspector.call(operation, input as never, options);
    expect([answer.status, answer.body.detail]).toEqual([200, undefined]);
  };
  const refused = async (
    { people }: FieldOrder,
    request: { operation: { id: string }; options?: object },
    type: string,
    status = 409,
  ) => {
    const visitor = request.operation.id === 'sign-field-balance' ? people.technician : people.inspector;
    await expectRefused({ shop, visitor }, request as never, { status, type });
  };
  const finishing = async (
    order: FieldOrder,
    operation: typeof op.releaseFieldBalance | typeof op.signFieldBalance,
  ) => {
    const { version } = await order.detail();
    const input = { fieldBalanceId: order.id, signature: pin };
    return {
      operation,
      input: operation.id === 'sign-field-balance' ? { ...input, remarks: '' } : input,
      options: { version },
    };
  };

  it('puts under review what rests on it, here and released, and nothing of an order that was given up', async () => {
    const { reviews } = await calibrate('0.530');
    const rows = await listed();
    expect(rows.map(({ fieldBalance, signed: kind }) => [fieldBalance.number, kind])).toEqual([
      [released.number, 'balanced'],
      [signed.number, 'balanced'],
    ]);
    expect(reviews).toBe(2);
    expect(rows[0]).toMatchObject({
      ...{ decision: null, answered: false, unit: 'ips', instrument: { tag: 'VIB-01' }, foundOn: day(0) },
      ...{ readings: [{ rpm: 2_300, amplitude: '0.05', phase: '40' }], propeller: { serial: 'F7501' } },
    });
    const history = await released.people.inspector.call(processOperations.listCalibrations, {
      instrumentId: released.instrumentId,
    });
    expect(history.body.rows[0]).toMatchObject({ asFound: 'out', reviews: 2 });
  });

  it('keeps a balance from its release until it is decided', async () => {
    expect((await signed.detail()).open[0]).toMatch(/^VIB-01 was found out of tolerance; nobody decided yet/);
    await refused(signed, await finishing(signed, op.releaseFieldBalance), 'instrument-in-doubt');
    await refused(signed, await deciding(signed, 'customer-told'), 'unit-not-released');
    await refused(signed, await deciding(signed, 'stands', { fieldBalanceId: released.id }), 'not-found', 404);
    const asTechnician = { shop, visitor: signed.people.technician };
    const denied = { status: 403, type: 'not-permitted' };
    await expectRefused(asTechnician, (await deciding(signed, 'stands')) as never, denied);
  });

  it('of a balance that was released, its customer is told', async () => {
    await refused(released, await deciding(released, 'measure-again'), 'unit-released');
    const again = await deciding(released, 'stands');
    await decide(released, 'customer-told');
    await refused(released, { ...again, options: { version: 2 } }, 'review-decided');
    const kept = await readsOf(shop).fieldSignature.findMany({ where: { kind: 'reviewed' } });
    expect(kept).toMatchObject([{ fieldBalanceId: released.id, content: { decision: 'customer-told' } }]);
  });

  it('is read again under a new sheet: then nothing rests on the old one', async () => {
    await decide(signed, 'measure-again');
    expect(await signed.detail()).toMatchObject({ state: 'runs', balanced: null });
    expect((await signed.detail()).open).toEqual([expect.stringMatching(/to be read again under a new sheet$/)]);
    await refused(signed, await finishing(signed, op.signFieldBalance), 'instrument-in-doubt');
    expect(await reviewOf(signed)).toMatchObject({ decision: 'measure-again', decidedBy: expect.any(String) });
    await signed.setUp();
    expect(await listed()).toEqual([]);
    const all = await listed('all');
    expect(all.map(({ answered }) => answered)).toEqual([false, true]);
    await signed.baseline();
    await signed.balanced();
    await signed.released();
  });

  it('doubts a sheet that nothing was signed on yet, which may stand', async () => {
    const begun = await FieldOrder.planned(shop, job);
    await begun.setUp();
    await begun.baseline();
    await calibrate('0.530');
    expect(await reviewOf(begun)).toMatchObject({ signed: 'set-up', readings: [{ amplitude: '0.05' }] });
    await refused(begun, await finishing(begun, op.signFieldBalance), 'instrument-in-doubt');
    await decide(begun, 'stands');
    await begun.balanced();
    await begun.released();
  });

  it('found good, ends what comes under review', async () => {
    expect(await calibrate('0.503')).toMatchObject({ asFound: 'good', reviews: 0 });
  });
});
