import { findingOperations } from '@hubwright/contracts/findings/operations';
import { quoteOperations as quotes } from '@hubwright/contracts/quotes/operations';
import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { multiplyPrice, percentOf } from '@hubwright/rules/money';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { consentGap } from '../../apps/server/src/modules/work-orders/public.ts';
import { Database } from '../../apps/server/src/platform/database/client.ts';
import { readsOf, threeBlade } from '../support/arrivals.ts';
import { as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/** The shop's time as the tests set it: the real one, moved by days. */
class MovedClock {
  days = 0;
  now(): Date {
    return new Date(Date.now() + this.days * 86_400_000);
  }
}

describe('from estimate to approval', () => {
  let shop: ShopApp;
  const clock = new MovedClock();
  let desk: Visitor;
  let inspector: Visitor;
  let technician: Visitor;

  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    desk = await as(shop, 'front-desk');
    inspector = await as(shop, 'inspector');
    technician = await as(shop, 'technician');
  });
  afterAll(() => shop.close());

  const now = () => clock.now().toISOString();
  const usd = (minor: number) => ({ currency: 'USD', minor });
  const see = async (workOrderId: string) => (await desk.call(op.workOrder, { workOrderId })).body;

  /** Received and looked at. */
  async function arrived(serial: string): Promise<string> {
    const { body } = await desk.call(op.receiveUnit, await threeBlade(shop, serial));
    const signed = await inspector.call(
      op.signPreliminaryInspection,
      { workOrderId: body.id, result: 'as booked in', signature: pin },
      { version: 1 },
    );
    expect(signed.status).toBe(200);
    return body.id;
  }

  /** A quote of a kind, written and sent. */
  async function offered(workOrderId: string, kind: 'estimate' | 'firm' | 'over-and-above', more: object = {}) {
    const written = await desk.call(quotes.writeQuote, { workOrderId, kind, ...more });
    expect(written.body).toMatchObject({ version: 1 });
    const sent = await desk.call(quotes.sendQuote, { quoteId: written.body.id }, { version: 1 });
    expect(sent.status).toBe(200);
    return { ...written.body, version: sent.body.version, fileHash: sent.body.fileHash };
  }

  function approve(quote: { id: string; version: number; totalMinor: number }, minor = quote.totalMinor) {
    const input = { quoteId: quote.id, decidedByName: 'Leda Varley', decidedAt: now(), amount: usd(minor) };
    return desk.call(quotes.approveQuote, input, { version: quote.version });
  }

  /** Evaluation approved, taken apart, declared inspected: the firm quote is due. */
  async function inspected(serial: string, inBetween: (workOrderId: string) => Promise<void> = async () => undefined) {
    const workOrderId = await arrived(serial);
    expect((await approve(await offered(workOrderId, 'estimate'), 80_000)).status).toBe(200);
    const teardown = await technician.call(travelerOperations.beginTeardown, { workOrderId, energyReleased: true });
    expect(teardown.status).toBe(200);
    await inBetween(workOrderId);
    const { version } = await see(workOrderId);
    expect((await inspector.call(op.declareInspected, { workOrderId }, { version })).status).toBe(200);
    return workOrderId;
  }

  /** Something wrong with blade 1, decided by the inspector, with labour and one part to pay for. */
  async function foundOnBlade(workOrderId: string, labourMinor: number): Promise<string> {
    const { travelers } = await see(workOrderId);
    const travelerId = travelers.find((traveler) => traveler.position === 'blade 1')?.id ?? '';
    const raised = await technician.call(findingOperations.raiseFinding, {
      ...{ travelerId, area: 'leading-edge', damage: 'nicked', place: 'station 24', description: 'deep nick' },
    });
    expect(raised.status).toBe(200);
    const part = await readsOf(shop).part.findUniqueOrThrow({ where: { number: 'Q301-41' } });
    const decided = await inspector.call(
      findingOperations.disposeFinding,
      {
        ...{ findingId: raised.body.id, disposition: 'repair', labourMinor, signature: pin },
        steps: [{ title: 'Blend the nick', process: 'blade-repair', standardMinutes: 40 }],
        parts: [{ partId: part.id, position: 'blade 1', quantity: 3 }],
      },
      { version: 1 },
    );
    expect(decided.status).toBe(200);
    return raised.body.id;
  }

  it('an estimate is flat-rate labour, the mandatory kit at today’s cost, outside services and tax', async () => {
    const workOrderId = await arrived('QP3001');
    const outsideServices = [{ description: 'Plating of clamps, outside', amountMinor: 32_050, taxable: false }];
    const quote = await offered(workOrderId, 'estimate', { outsideServices, promiseDays: 21 });
    const { body } = await desk.call(quotes.quote, { quoteId: quote.id });
    const reads = readsOf(shop);
    const rate = await reads.flatRate.findFirstOrThrow({
      where: { scope: 'overhaul', model: { designation: 'Q3C-76' } },
    });
    const kit = await reads.kitLine.findMany({
      where: { kit: { workOrderId }, source: 'new' },
      include: { part: true },
    });
    const partsMinor = kit.reduce(
      (sum, line) => sum + multiplyPrice(line.part.unitPrice, line.minimum ?? line.quantity, 'USD').minor,
      0,
    );
    const taxable = rate.labourMinor + partsMinor;
    const tax = percentOf(usd(taxable), '6.5').minor;
    expect(partsMinor).toBeGreaterThan(0);
    expect(body).toMatchObject({
      state: 'sent',
      subtotalMinor: taxable + 32_050,
      taxMinor: tax,
      totalMinor: taxable + 32_050 + tax,
      chasers: [{ overdue: false }, { overdue: false }, { overdue: false }],
    });
    expect(await see(workOrderId)).toMatchObject({ consent: 'estimate-sent', ball: 'customer' });
  });

  it('its PDF says all of it, is tagged, and is the same bytes as its hash', async () => {
    const [quote] = (await desk.call(quotes.listQuotes, { kind: 'estimate' })).body.rows;
    const response = await fetch(`${shop.address}/api/quotes/${quote?.id}/document`, {
      headers: { cookie: desk.cookie },
    });
    expect(response.headers.get('content-type')).toBe('application/pdf');
    const pdf = await readPdf(new Uint8Array(await response.arrayBuffer()));
    const { body } = await desk.call(quotes.quote, { quoteId: quote?.id ?? '' });
    expect(pdf.hash).toBe(body.fileHash);
    expect(pdf.title).toBe(`Estimate ${body.number}`);
    expect(pdf.marked).toBe(true);
    expect(pdf.roles).toEqual(expect.arrayContaining(['Document', 'H1', 'H2', 'P', 'Table', 'TR', 'TH', 'TD']));
    const amount = (minor: number) => `${Math.floor(minor / 100)}.${String(minor % 100).padStart(2, '0')} USD`;
    for (const words of [
      'Tansy Hollow Airscrew Works',
      'Demonstration data, not for use on aircraft.',
      'Brackenmoor Air Charter (BRACKEN)',
      'serial QP3001',
      'Plating of clamps, outside (no tax)',
      amount(body.totalMinor),
      body.validUntil,
      ...body.lines.map((line) => line.description.slice(0, 12)),
    ])
      expect(pdf.text).toContain(words);
  });

  it('evaluation is approved by a named person, up to a cap between the fee and the estimate, after it was sent', async () => {
    const workOrderId = await arrived('QP3002');
    const quote = await offered(workOrderId, 'estimate');
    expect((await approve(quote, 47_999)).body.type).toBe('/problems/amount-wrong');
    expect((await approve(quote, quote.totalMinor + 1)).body.type).toBe('/problems/amount-wrong');
    const input = { quoteId: quote.id, decidedByName: 'Leda Varley', amount: usd(80_000) };
    const answer = (more: object) =>
      desk.call(quotes.approveQuote, { ...input, decidedAt: now(), ...more }, { version: quote.version });
    const early = await answer({ decidedAt: '2026-01-01T10:00:00Z' });
    expect([early.body.type, early.body.errors]).toMatchObject([
      '/problems/answer-time-wrong',
      [{ pointer: '/decidedAt' }],
    ]);
    expect((await answer({ decidedAt: '2999-01-01T10:00:00Z' })).body.type).toBe('/problems/answer-time-wrong');
    expect((await answer({ decidedByName: '' })).body.errors).toMatchObject([{ pointer: '/decidedByName' }]);
    expect((await answer({ amount: { currency: 'EUR', minor: 80_000 } })).body.type).toBe('/problems/amount-wrong');
    expect((await answer({})).status).toBe(200);
    expect(await see(workOrderId)).toMatchObject({
      consent: 'evaluation-approved',
      evaluationCapMinor: 80_000,
      ball: 'technician',
    });
  });

  it('the firm quote waits for every finding, holds what was found, and supersedes its revision before', async () => {
    let findingId = '';
    const workOrderId = await inspected('QP3003', async (id) => {
      findingId = await foundOnBlade(id, 26_000);
    });
    expect(await see(workOrderId)).toMatchObject({ stage: 'inspected', consent: 'quote-due', ball: 'front-desk' });
    const one = await offered(workOrderId, 'firm');
    const two = await offered(workOrderId, 'firm', { promiseDays: 20 });
    expect(two).toMatchObject({ revision: 2, totalMinor: one.totalMinor });
    const old = await desk.call(quotes.quote, { quoteId: one.id });
    expect(old.body.state).toBe('superseded');
    expect((await approve({ ...one, version: old.body.version })).body.type).toBe('/problems/quote-not-open');
    const { body } = await desk.call(quotes.quote, { quoteId: two.id });
    expect(body.supersedesId).toBe(one.id);
    expect(body.lines.filter((line) => line.findingId === findingId).map((line) => line.kind)).toEqual([
      'finding-labour',
      'finding-part',
    ]);
    expect((await approve(two, two.totalMinor - 1)).body.type).toBe('/problems/amount-wrong');
    expect((await approve(two)).status).toBe(200);
    const after = await see(workOrderId);
    expect(after).toMatchObject({ stage: 'in-work', consent: 'approved' });
    expect(after.promisedOn).not.toBeNull();
  });

  it('what turns up later is paid for before its work starts: over and above', async () => {
    const workOrderId = await inspected('QP3004');
    expect((await approve(await offered(workOrderId, 'firm'))).status).toBe(200);
    const nothing = await desk.call(quotes.writeQuote, { workOrderId, kind: 'over-and-above' });
    expect(nothing.body.type).toBe('/problems/nothing-to-quote');
    const findingId = await foundOnBlade(workOrderId, 19_000);
    const database = new Database(shop.databaseUrl);
    const gap = () => database.prisma.$transaction((tx) => consentGap(tx, workOrderId, findingId));
    expect(await gap()).toBe('over-and-above');
    const board = await desk.call(op.deskBoard, {});
    expect(board.body.toWrite).toContainEqual(expect.objectContaining({ kind: 'over-and-above', note: '1 findings' }));
    const quote = await offered(workOrderId, 'over-and-above');
    expect(await gap()).toBe('over-and-above');
    const { body } = await desk.call(quotes.quote, { quoteId: quote.id });
    expect(new Set(body.lines.map((line) => line.findingId))).toEqual(new Set([findingId]));
    expect(body.subtotalMinor).toBeGreaterThan(19_000);
    const waiting = await desk.call(op.deskBoard, {});
    expect(waiting.body.overAndAboveWaiting.map((offer) => offer.id)).toContain(quote.id);
    expect((await approve(quote)).status).toBe(200);
    expect(await gap()).toBeNull();
    expect(await see(workOrderId)).toMatchObject({ stage: 'in-work', consent: 'approved' });
    await database.close();
  });

  it('over-and-above may be declined without a word about the unit, and then its work stays shut', async () => {
    const workOrderId = await inspected('QP3005');
    expect((await approve(await offered(workOrderId, 'firm'))).status).toBe(200);
    const findingId = await foundOnBlade(workOrderId, 19_000);
    const quote = await offered(workOrderId, 'over-and-above', { findingIds: [findingId] });
    const no = { quoteId: quote.id, decidedByName: 'Leda Varley', decidedAt: now() };
    const misplaced = await desk.call(quotes.declineQuote, { ...no, path: 'scrap' }, { version: quote.version });
    expect(misplaced.body.type).toBe('/problems/answer-path-missing');
    const declined = await desk.call(quotes.declineQuote, no, { version: quote.version });
    expect(declined.body).toMatchObject({ evaluationFeeMinor: 0 });
    const database = new Database(shop.databaseUrl);
    expect(await database.prisma.$transaction((tx) => consentGap(tx, workOrderId, findingId))).toBe('over-and-above');
    await database.close();
    expect(await see(workOrderId)).toMatchObject({ stage: 'in-work', consent: 'approved' });
  });

  it.each([
    ['return', 'returning-unrepaired'],
    ['purchase', 'closed'],
    ['scrap', 'scrapped'],
  ] as const)('a firm no may mean %s; the evaluation fee is due', async (path, stage) => {
    const workOrderId = await inspected(`QP31-${path}`);
    const quote = await offered(workOrderId, 'firm');
    const no = { quoteId: quote.id, decidedByName: 'Leda Varley', decidedAt: now() };
    const pathless = await desk.call(quotes.declineQuote, no, { version: quote.version });
    expect(pathless.body.errors).toMatchObject([{ pointer: '/path' }]);
    const price = path === 'purchase' ? { purchasePrice: usd(150_000) } : {};
    const declined = await desk.call(quotes.declineQuote, { ...no, path, ...price }, { version: quote.version });
    expect(declined.body).toMatchObject({ evaluationFeeMinor: 48_000 });
    expect(await see(workOrderId)).toMatchObject({ stage, consent: 'declined' });
  });

  it('a unit that goes back in pieces leaves tagged, with its loose items, and can come again once closed', async () => {
    const { workOrderId, id, version } = await readsOf(shop)
      .workOrder.findFirstOrThrow({ where: { stage: 'returning-unrepaired' } })
      .then((row) => ({ workOrderId: row.id, ...row }));
    const { looseItems } = await see(id);
    const packed = looseItems.map((item) => item.id);
    const ok = (more: object) => desk.call(op.okToShip, { workOrderId, ...more }, { version });
    expect((await ok({ looseItemsPacked: packed })).body.type).toBe('/problems/not-tagged');
    const left = await ok({ taggedUnserviceable: true, looseItemsPacked: packed.slice(1) });
    expect(left.body).toMatchObject({ type: '/problems/loose-items-left', left: [{ description: 'spinner dome' }] });
    const early = await desk.call(op.shipUnit, { workOrderId, carrier: 'Fellside Carriers' }, { version });
    expect(early.body.type).toBe('/problems/not-ok-to-ship');
    expect((await ok({ taggedUnserviceable: true, looseItemsPacked: packed })).status).toBe(200);
    const shipped = await desk.call(
      op.shipUnit,
      { workOrderId, carrier: 'Fellside Carriers' },
      { version: version + 1 },
    );
    expect(shipped.body).toMatchObject({ stage: 'shipped' });
    const again = await threeBlade(shop, 'QP31-return');
    expect((await desk.call(op.receiveUnit, again)).body.type).toBe('/problems/already-in-shop');
    expect((await desk.call(op.closeWorkOrder, { workOrderId }, { version: version + 2 })).body).toMatchObject({
      stage: 'closed',
    });
    const { body } = await desk.call(op.returningUnit, { serial: 'qp31-return' });
    expect(body.rows[0]).toMatchObject({
      openWorkOrder: null,
      visits: [{ stage: 'closed' }],
      lastTimes: { sinceNewTenths: 21_004 },
    });
    expect(body.rows[0]?.parts).toHaveLength(4);
    const backwards = { ...again, times: { ...again.times, sinceNewTenths: 21_003 } };
    expect((await desk.call(op.receiveUnit, backwards)).body).toMatchObject({
      type: '/problems/hours-wrong',
      errors: [{ pointer: '/times/sinceNewTenths' }],
    });
    const faster = { ...again, times: { ...again.times, sinceNewTenths: 21_004 + 241 } };
    expect((await desk.call(op.receiveUnit, faster)).body.type).toBe('/problems/hours-wrong');
    expect((await desk.call(op.receiveUnit, again)).status).toBe(200);
  });

  it('a declined estimate costs nothing', async () => {
    const quote = await offered(await arrived('QP3006'), 'estimate');
    const no = { quoteId: quote.id, decidedByName: 'Leda Varley', decidedAt: now(), path: 'return' as const };
    expect((await desk.call(quotes.declineQuote, no, { version: quote.version })).body).toMatchObject({
      evaluationFeeMinor: 0,
    });
  });

  it('silence: chasers at 2, 5 and 10 days, then a hold, which the answer lifts', async () => {
    const workOrderId = await arrived('QP3007');
    const quote = await offered(workOrderId, 'estimate');
    const overdue = async () =>
      (await desk.call(quotes.overdueAnswers, { limit: 200 })).body.rows.find((row) => row.quote.id === quote.id);
    const silence = async () => {
      const { body } = await desk.call(quotes.quote, { quoteId: quote.id });
      return desk.call(quotes.recordSilence, { quoteId: quote.id }, { version: body.version });
    };
    expect(await overdue()).toBeUndefined();
    for (const [day, index] of [
      [2, 0],
      [5, 1],
      [10, 2],
    ] as const) {
      clock.days = day - 1;
      expect(await overdue()).toBeUndefined();
      clock.days = day;
      expect(await overdue()).toMatchObject({ daysOverdue: 0, silenceDue: false });
      expect((await silence()).body.type).toBe('/problems/answer-not-overdue');
      const { body } = await desk.call(quotes.quote, { quoteId: quote.id });
      const chaserId = body.chasers[index]?.id ?? '';
      expect((await desk.call(quotes.sendChaser, { chaserId, note: 'left a message' })).status).toBe(200);
      expect((await desk.call(quotes.sendChaser, { chaserId, note: 'again' })).body.type).toBe('/problems/chaser-done');
    }
    expect(await overdue()).toMatchObject({ silenceDue: true, chaser: null });
    expect((await silence()).status).toBe(200);
    expect(await see(workOrderId)).toMatchObject({
      consent: 'estimate-silent',
      holds: [{ kind: 'silence', liftedByRole: 'front-desk' }],
    });
    const { body } = await desk.call(quotes.quote, { quoteId: quote.id });
    expect((await approve({ ...quote, version: body.version }, 80_000)).status).toBe(200);
    expect(await see(workOrderId)).toMatchObject({ consent: 'evaluation-approved', holds: [] });
    clock.days = 0;
  });

  it('an offer past its validity is not taken: a new revision is written', async () => {
    const workOrderId = await arrived('QP3008');
    const quote = await offered(workOrderId, 'estimate');
    clock.days = 31;
    expect((await approve(quote, 80_000)).body.type).toBe('/problems/quote-expired');
    const fresh = await offered(workOrderId, 'estimate');
    expect((await approve(fresh, 80_000)).status).toBe(200);
    clock.days = 0;
  });
});
