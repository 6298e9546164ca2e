import { createHash } from 'node:crypto';
import { unitHistoryOperations as op, type WholeUnitHistory } from '@hubwright/contracts/units/unit-history-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readsOf } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('the whole history of a unit', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let job: Job;
  let history: WholeUnitHistory;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    desk = await as(shop, 'front-desk');
    job = await Job.arrived(shop, 'UH100', {});
    await job.inWork();
    await job.signed('repair');
    history = (await desk.call(op.wholeUnitHistory, { itemId: job.unitId })).body;
  }, 120_000);
  afterAll(() => shop.close());

  it('says what it is, what it is made of, where it is and what its times come from', () => {
    expect(history).toMatchObject({
      format: 'unit-history/1',
      identity: { id: job.unitId, serial: 'UH100', kind: 'assembly' },
      where: { words: `In the shop on ${job.number}` },
    });
    expect(history.parts.map(({ position, serial }) => [position, serial])).toContainEqual(['blade 1', 'B1-UH100']);
    expect(history.times.papers.length).toBeGreaterThan(0);
  });

  it('has every signature with the text that was signed, whose hash anybody can compute', async () => {
    const signatures = history.workOrders.flatMap((one) => one.signatures);
    const onRecord = await readsOf(shop).signOff.count({ where: { workOrderId: job.id } });
    expect(signatures.length).toBe(onRecord);
    expect(onRecord).toBeGreaterThan(0);
    for (const { content, contentHash } of signatures)
      expect(createHash('sha256').update(content).digest('hex')).toBe(contentHash);
  });

  it('of a part has only what is its own', async () => {
    const blade = await readsOf(shop).serializedItem.findFirstOrThrow({ where: { serial: 'B1-UH100' } });
    const own: WholeUnitHistory = (await desk.call(op.wholeUnitHistory, { itemId: blade.id })).body;
    expect(own.installedIn).toMatchObject([{ id: job.unitId, position: 'blade 1' }]);
    const steps = own.workOrders.flatMap((one) => one.signatures).flatMap(({ step }) => step?.traveler ?? []);
    const travelers = await readsOf(shop).traveler.findMany({ where: { itemId: blade.id } });
    expect(new Set(steps)).toEqual(new Set(travelers.map(({ number }) => number)));
  });

  it('prints as a PDF of several pages, and its papers are listed beside', async () => {
    const answer = await fetch(`${shop.address}/api/units/${job.unitId}/whole-history/pdf`, {
      headers: { cookie: desk.cookie },
    });
    expect(answer.headers.get('content-type')).toBe('application/pdf');
    const bytes = Buffer.from(await answer.arrayBuffer());
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    const pages = [...bytes.toString('latin1').matchAll(/\/Type \/Page\b/g)].length;
    expect(pages).toBeGreaterThan(1);
    const { body } = await desk.call(op.unitPapers, { itemId: job.unitId });
    expect(body.releases).toEqual([]);
    expect(body.documents.map(({ kind, workOrder }) => [kind, workOrder.number])).toContainEqual([
      'manual',
      job.number,
    ]);
  });

  it('is for those who may take it out, and of what is on record', async () => {
    const technician = await as(shop, 'technician');
    expect((await technician.call(op.wholeUnitHistory, { itemId: job.unitId })).status).toBe(403);
    expect((await technician.call(op.unitPapers, { itemId: job.unitId })).status).toBe(200);
    const nobody = '01900000-0000-7000-8000-000000000000';
    expect((await desk.call(op.wholeUnitHistory, { itemId: nobody })).status).toBe(404);
    expect((await desk.call(op.unitPapers, { itemId: nobody })).status).toBe(404);
  });
});
