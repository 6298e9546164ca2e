import { findingOperations } from '@hubwright/contracts/findings/operations';
import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { quoteOperations as quotes } from '@hubwright/contracts/quotes/operations';
import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readsOf, threeBlade } from '../support/arrivals.ts';
import { DeskStory, usd } from '../support/desk-story.ts';

/** Whether the parts room is told to buy for this unit. */
async function shortFor(story: DeskStory, workOrderId: string): Promise<boolean> {
  const kit = await readsOf(story.shop).kit.findFirstOrThrow({ where: { workOrderId } });
  const { body } = await story.desk.call(kitsOperations.shortages, { limit: 200 });
  return body.rows.some((row) => row.kits.some(({ kitId }) => kitId === kit.id));
}

describe('no, and no answer', () => {
  let story: DeskStory;
  beforeAll(async () => {
    story = await DeskStory.open();
  });
  afterAll(() => story.close());

  it('over-and-above may be declined without a word about the unit, and then its work stays shut', async () => {
    const workOrderId = await story.inWork('QP3005');
    const findingId = await story.foundOnBlade(workOrderId, 19_000);
    const quote = await story.offered(workOrderId, 'over-and-above', { findingIds: [findingId] });
    const no = { quoteId: quote.id, decidedByName: 'Leda Varley', decidedAt: story.now() };
    const misplaced = await story.desk.call(quotes.declineQuote, { ...no, path: 'scrap' }, { version: quote.version });
    expect(misplaced.body.type).toBe('/problems/answer-path-missing');
    const declined = await story.desk.call(quotes.declineQuote, no, { version: quote.version });
    expect(declined.body).toMatchObject({ evaluationFeeMinor: 0 });
    const finding = await story.technician.call(findingOperations.finding, { findingId });
    expect(finding.body.answer).toBe('declined');
    expect(await story.see(workOrderId)).toMatchObject({ stage: 'in-work', consent: 'approved' });
  });

  it.each([
    ['return', 'returning-unrepaired'],
    ['purchase', 'closed'],
    ['scrap', 'scrapped'],
  ] as const)('a firm no may mean %s; the evaluation fee is due', async (path, stage) => {
    const workOrderId = await story.inspected(`QP31-${path}`);
    const quote = await story.offered(workOrderId, 'firm');
    const no = { quoteId: quote.id, decidedByName: 'Leda Varley', decidedAt: story.now() };
    expect(await shortFor(story, workOrderId)).toBe(true);
    const pathless = await story.desk.call(quotes.declineQuote, no, { version: quote.version });
    expect(pathless.body.errors).toMatchObject([{ pointer: '/path' }]);
    const price = path === 'purchase' ? { purchasePrice: usd(150_000) } : {};
    const declined = await story.desk.call(quotes.declineQuote, { ...no, path, ...price }, { version: quote.version });
    expect(declined.body).toMatchObject({ evaluationFeeMinor: 48_000 });
    expect(await story.see(workOrderId)).toMatchObject({ stage, consent: 'declined' });
    expect(await shortFor(story, workOrderId)).toBe(false);
  });

  it('a unit that goes back in pieces leaves tagged, with its loose items, and can come again once closed', async () => {
    const { workOrderId, id, version } = await readsOf(story.shop)
      .workOrder.findFirstOrThrow({ where: { stage: 'returning-unrepaired' } })
      .then((row) => ({ workOrderId: row.id, ...row }));
    const { looseItems } = await story.see(id);
    const packed = looseItems.map((item) => item.id);
    const ok = (more: object) => story.desk.call(op.okToShip, { workOrderId, ...more }, { version });
    expect((await ok({ looseItemsPacked: packed })).body.type).toBe('/problems/not-tagged');
    const left = await ok({ taggedUnserviceable: true, looseItemsPacked: packed.slice(1) });
    expect(left.body).toMatchObject({ type: '/problems/loose-items-left', left: [{ description: 'spinner dome' }] });
    const early = await story.desk.call(op.shipUnit, { workOrderId, carrier: 'Fellside Carriers' }, { version });
    expect(early.body.type).toBe('/problems/not-ok-to-ship');
    expect((await ok({ taggedUnserviceable: true, looseItemsPacked: packed })).status).toBe(200);
    const shipped = await story.desk.call(
      op.shipUnit,
      { workOrderId, carrier: 'Fellside Carriers' },
      { version: version + 1 },
    );
    expect(shipped.body).toMatchObject({ stage: 'shipped' });
    const again = await threeBlade(story.shop, 'QP31-return');
    expect((await story.desk.call(op.receiveUnit, again)).body.type).toBe('/problems/already-in-shop');
    expect((await story.desk.call(op.closeWorkOrder, { workOrderId }, { version: version + 2 })).body).toMatchObject({
      stage: 'closed',
    });
    const { body } = await story.desk.call(op.returningUnit, { serial: 'qp31-return' });
    expect(body.rows[0]).toMatchObject({
      openWorkOrder: null,
      visits: [{ stage: 'closed' }],
      lastTimes: { sinceNewTenths: 21_004 },
    });
    expect(body.rows[0]?.parts).toHaveLength(4);
    const backwards = { ...again, times: { ...again.times, sinceNewTenths: 21_003 } };
    expect((await story.desk.call(op.receiveUnit, backwards)).body).toMatchObject({
      type: '/problems/hours-wrong',
      errors: [{ pointer: '/times/sinceNewTenths' }],
    });
    const faster = { ...again, times: { ...again.times, sinceNewTenths: 21_004 + 241 } };
    expect((await story.desk.call(op.receiveUnit, faster)).body.type).toBe('/problems/hours-wrong');
    expect((await story.desk.call(op.receiveUnit, again)).status).toBe(200);
  });

  it('a declined estimate costs nothing', async () => {
    const quote = await story.offered(await story.arrived('QP3006'), 'estimate');
    const no = { quoteId: quote.id, decidedByName: 'Leda Varley', decidedAt: story.now(), path: 'return' as const };
    expect((await story.desk.call(quotes.declineQuote, no, { version: quote.version })).body).toMatchObject({
      evaluationFeeMinor: 0,
    });
  });

  it('silence: chasers at 2, 5 and 10 days, then a hold, which the answer lifts', async () => {
    const workOrderId = await story.arrived('QP3007');
    const quote = await story.offered(workOrderId, 'estimate');
    const overdue = async () =>
      (await story.desk.call(quotes.overdueAnswers, { limit: 200 })).body.rows.find((row) => row.quote.id === quote.id);
    const silence = async () => {
      const { body } = await story.desk.call(quotes.quote, { quoteId: quote.id });
      return story.desk.call(quotes.recordSilence, { quoteId: quote.id }, { version: body.version });
    };
    expect(await overdue()).toBeUndefined();
    const began = story.clock.days;
    for (const [day, index] of [
      [2, 0],
      [5, 1],
      [10, 2],
    ] as const) {
      story.clock.days = began + day - 1;
      expect(await overdue()).toBeUndefined();
      story.clock.days = began + day;
      expect(await overdue()).toMatchObject({ daysOverdue: 0, silenceDue: false });
      expect((await silence()).body.type).toBe('/problems/answer-not-overdue');
      const { body } = await story.desk.call(quotes.quote, { quoteId: quote.id });
      const chaserId = body.chasers[index]?.id ?? '';
      expect((await story.desk.call(quotes.sendChaser, { chaserId, note: 'left a message' })).status).toBe(200);
      expect((await story.desk.call(quotes.sendChaser, { chaserId, note: 'again' })).body.type).toBe(
        '/problems/chaser-done',
      );
    }
    expect(await overdue()).toMatchObject({ silenceDue: true, chaser: null });
    expect((await silence()).status).toBe(200);
    expect(await story.see(workOrderId)).toMatchObject({
      consent: 'estimate-silent',
      holds: [{ kind: 'silence', liftedByRole: 'front-desk' }],
    });
    const { body } = await story.desk.call(quotes.quote, { quoteId: quote.id });
    expect((await story.approve({ ...quote, version: body.version }, 80_000)).status).toBe(200);
    expect(await story.see(workOrderId)).toMatchObject({ consent: 'evaluation-approved', holds: [] });
  });

  it('an offer past its validity is not taken: a new revision is written', async () => {
    const workOrderId = await story.arrived('QP3008');
    const quote = await story.offered(workOrderId, 'estimate');
    // Never back: the server writes nothing dated before what it wrote already.
    story.clock.days += 31;
    expect((await story.approve(quote, 80_000)).body.type).toBe('/problems/quote-expired');
    const fresh = await story.offered(workOrderId, 'estimate');
    expect((await story.approve(fresh, 80_000)).status).toBe(200);
  });
});
