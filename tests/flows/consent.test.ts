import { findingOperations } from '@hubwright/contracts/findings/operations';
import { quoteOperations as quotes } from '@hubwright/contracts/quotes/operations';
import { workOrderOperations as op } from '@hubwright/contracts/work-orders/operations';
import { multiplyPrice, percentOf } from '@hubwright/rules/money';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readsOf } from '../support/arrivals.ts';
import { DeskStory, usd } from '../support/desk-story.ts';
import { readPdf } from '../support/read-pdf.ts';

describe('from estimate to approval', () => {
  let story: DeskStory;
  beforeAll(async () => {
    story = await DeskStory.open();
  });
  afterAll(() => story.close());

  it('an estimate is flat-rate labour, the mandatory kit at today’s cost, outside services and tax', async () => {
    const workOrderId = await story.arrived('QP3001');
    const outsideServices = [{ description: 'Plating of clamps, outside', amountMinor: 32_050, taxable: false }];
    const quote = await story.offered(workOrderId, 'estimate', { outsideServices, promiseDays: 21 });
    const { body } = await story.desk.call(quotes.quote, { quoteId: quote.id });
    const reads = readsOf(story.shop);
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
    expect(await story.see(workOrderId)).toMatchObject({ consent: 'estimate-sent', ball: 'customer' });
  });

  it('its PDF says all of it, is tagged, and is the same bytes as its hash', async () => {
    const [quote] = (await story.desk.call(quotes.listQuotes, { kind: 'estimate' })).body.rows;
    const response = await fetch(`${story.shop.address}/api/quotes/${quote?.id}/document`, {
      headers: { cookie: story.desk.cookie },
    });
    expect(response.headers.get('content-type')).toBe('application/pdf');
    const pdf = await readPdf(new Uint8Array(await response.arrayBuffer()));
    const { body } = await story.desk.call(quotes.quote, { quoteId: quote?.id ?? '' });
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
    const workOrderId = await story.arrived('QP3002');
    const quote = await story.offered(workOrderId, 'estimate');
    expect((await story.approve(quote, 47_999)).body.type).toBe('/problems/amount-wrong');
    expect((await story.approve(quote, quote.totalMinor + 1)).body.type).toBe('/problems/amount-wrong');
    const input = { quoteId: quote.id, decidedByName: 'Leda Varley', amount: usd(80_000) };
    const answer = (more: object) =>
      story.desk.call(quotes.approveQuote, { ...input, decidedAt: story.now(), ...more }, { version: quote.version });
    const early = await answer({ decidedAt: '2026-01-01T10:00:00Z' });
    expect([early.body.type, early.body.errors]).toMatchObject([
      '/problems/answer-time-wrong',
      [{ pointer: '/decidedAt' }],
    ]);
    expect((await answer({ decidedAt: '2999-01-01T10:00:00Z' })).body.type).toBe('/problems/answer-time-wrong');
    expect((await answer({ decidedByName: '' })).body.errors).toMatchObject([{ pointer: '/decidedByName' }]);
    expect((await answer({ amount: { currency: 'EUR', minor: 80_000 } })).body.type).toBe('/problems/amount-wrong');
    expect((await answer({})).status).toBe(200);
    expect(await story.see(workOrderId)).toMatchObject({
      consent: 'evaluation-approved',
      evaluationCapMinor: 80_000,
      ball: 'technician',
    });
  });

  it('the firm quote waits for every finding’s disposition', async () => {
    const workOrderId = await story.inspected('QP3009', async (id) => void (await story.raisedOnBlade(id)));
    const written = await story.desk.call(quotes.writeQuote, { workOrderId, kind: 'firm' });
    expect([written.status, written.body.type]).toEqual([409, '/problems/finding-undecided']);
    const priced = await story.desk.call(quotes.priceWork, { workOrderId, kind: 'firm' });
    expect(priced.body.missing).toEqual([expect.stringContaining('has no disposition yet')]);
  });

  it('the firm quote holds what was found, and supersedes its revision before', async () => {
    let findingId = '';
    const workOrderId = await story.inspected('QP3003', async (id) => {
      findingId = await story.foundOnBlade(id, 26_000);
    });
    expect(await story.see(workOrderId)).toMatchObject({
      stage: 'inspected',
      consent: 'quote-due',
      ball: 'front-desk',
    });
    const one = await story.offered(workOrderId, 'firm');
    const two = await story.offered(workOrderId, 'firm', { promiseDays: 20 });
    expect(two).toMatchObject({ revision: 2, totalMinor: one.totalMinor });
    const old = await story.desk.call(quotes.quote, { quoteId: one.id });
    expect(old.body.state).toBe('superseded');
    expect((await story.approve({ ...one, version: old.body.version })).body.type).toBe('/problems/quote-not-open');
    const { body } = await story.desk.call(quotes.quote, { quoteId: two.id });
    expect(body.supersedesId).toBe(one.id);
    expect(body.lines.filter((line) => line.findingId === findingId).map((line) => line.kind)).toEqual([
      'finding-labour',
      'finding-part',
    ]);
    expect((await story.approve(two, two.totalMinor - 1)).body.type).toBe('/problems/amount-wrong');
    expect((await story.approve(two)).status).toBe(200);
    const after = await story.see(workOrderId);
    expect(after).toMatchObject({ stage: 'in-work', consent: 'approved' });
    expect(after.promisedOn).not.toBeNull();
  });

  it('what turns up later is paid for before its work starts: over and above', async () => {
    const workOrderId = await story.inWork('QP3004');
    const nothing = await story.desk.call(quotes.writeQuote, { workOrderId, kind: 'over-and-above' });
    expect(nothing.body.type).toBe('/problems/nothing-to-quote');
    const findingId = await story.foundOnBlade(workOrderId, 19_000);
    const answer = async () => (await story.technician.call(findingOperations.finding, { findingId })).body.answer;
    expect(await answer()).toBe('not-asked');
    const board = await story.desk.call(op.deskBoard, {});
    expect(board.body.toWrite).toContainEqual(expect.objectContaining({ kind: 'over-and-above', note: 'One finding' }));
    const quote = await story.offered(workOrderId, 'over-and-above');
    expect(await answer()).toBe('waiting');
    const { body } = await story.desk.call(quotes.quote, { quoteId: quote.id });
    expect(new Set(body.lines.map((line) => line.findingId))).toEqual(new Set([findingId]));
    expect(body.subtotalMinor).toBeGreaterThan(19_000);
    const waiting = await story.desk.call(op.deskBoard, {});
    expect(waiting.body.overAndAboveWaiting.map((offer) => offer.id)).toContain(quote.id);
    expect((await story.approve(quote)).status).toBe(200);
    expect(await answer()).toBe('approved');
    expect(await story.see(workOrderId)).toMatchObject({ stage: 'in-work', consent: 'approved' });
  });
});
