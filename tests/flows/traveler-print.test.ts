import { unitOperations } from '@hubwright/contracts/units/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { readBarcodes } from '../support/read-barcodes.ts';
import { readPdf } from '../support/read-pdf.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('a traveler on paper', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  let travelerId: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'technician');
    job = await Job.arrived(shop, '4850');
    await job.tornDown();
    for (;;) {
      const step = await job.nextAt('blade 1');
      travelerId = step.travelerId;
      await job.sign(step);
      if (step.measures.length > 0) break;
    }
  }, 120_000);
  afterAll(() => shop.close());

  async function paper(url: string): Promise<Buffer> {
    const answer = await fetch(shop.address + url, { headers: { cookie: technician.cookie } });
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    expect(answer.headers.get('content-disposition')).toMatch(/^inline; filename="[\w-]+\.pdf"$/);
    return Buffer.from(await answer.arrayBuffer());
  }
  const stepsOf = (id: string) =>
    job.reads.travelerStep.findMany({
      where: { travelerId: id, state: { not: 'not-needed' } },
      orderBy: { sequence: 'asc' },
      include: { measures: true, traveler: true },
    });

  it('names every step with limits, caution and who signed; an open step has room, and no value nobody read', async () => {
    const bytes = await paper(`/api/travelers/${travelerId}/pdf`);
    const { text, pages, marked, roles } = await readPdf(bytes);
    expect([marked, roles.includes('Figure')]).toEqual([true, true]);
    for (let page = 1; page <= pages; page += 1) expect(text).toContain(`Page ${page} of ${pages}`);
    const steps = await stepsOf(travelerId);
    expect(steps.length).toBeGreaterThan(6);
    for (const { sequence, title } of steps) expect(text).toContain(`${sequence}. ${title}`);
    const measured = steps.find((step) => step.measures.length > 0 && step.state === 'signed');
    for (const { name } of measured?.measures ?? []) expect(text).toContain(name);
    expect(text).toContain('CAUTION: Strippers and solvents');
    expect(text).toMatch(/Signed by Jory Penhallow \([^)]+\), good; done \d{4}-\d\d-\d\d \d\d:\d\d/);
    const open = steps.filter(({ state }) => state === 'open').length;
    expect(text.split('Signed ______').length - 1).toBe(open);
    const unread = steps.find((step) => step.measures.length > 0 && step.state === 'open');
    if (!unread) throw new Error('A measured step should still be open');
    const limits = unread.measures.map(({ low, high }) => low ?? high ?? '');
    expect(limits.every((limit) => text.includes(limit))).toBe(true);
  });

  it('carries barcodes that lead back to it and to each of its steps, whatever their order is by then', async () => {
    const steps = await stepsOf(travelerId);
    const number = steps[0]?.traveler.number ?? '';
    const codes = await readBarcodes(await paper(`/api/travelers/${travelerId}/pdf`));
    expect(codes).toHaveLength(steps.length + 2);
    expect(codes.splice(0, 2)).toEqual([number, 'CLOCK-OUT']);
    for (const [index, step] of steps.entries()) {
      const answer = await technician.call(unitOperations.find, { text: codes[index] ?? '' });
      expect(answer.body.rows).toEqual([
        expect.objectContaining({
          kind: 'traveler-step',
          id: step.id,
          path: `/travelers/${travelerId}?step=${step.id}`,
          exact: true,
        }),
      ]);
    }
    const found = await technician.call(unitOperations.find, { text: number });
    expect(found.body.rows[0]).toMatchObject({ kind: 'traveler', path: `/travelers/${travelerId}` });
    const nobody = await technician.call(unitOperations.find, { text: `${number}.000000` });
    expect(nobody.body.rows).toEqual([]);
  });

  it('comes with all others of its work order in one paper, each on a sheet of its own', async () => {
    const bytes = await paper(`/api/work-orders/${job.id}/travelers/pdf`);
    const travelers = await job.reads.traveler.findMany({ where: { workOrderId: job.id }, orderBy: { number: 'asc' } });
    const codes = await readBarcodes(bytes);
    expect(codes.filter((code) => /^TR-\d+$/.test(code))).toEqual(travelers.map(({ number }) => number));
    const { text } = await readPdf(bytes);
    for (const { number, title } of travelers) expect(text).toContain(`Traveler ${number}: ${title}`);
    // What a step’s sheet asks for, with the nuts in their sequence.
    expect(text).toContain('To be written down: torqued in ft-lb: hub nut 1, hub nut 7, hub nut 4');
    const none = await Job.arrived(shop, '4851');
    const answer = await fetch(`${shop.address}/api/work-orders/${none.id}/travelers/pdf`, {
      headers: { cookie: technician.cookie },
    });
    expect(answer.status).toBe(404);
  });
});
