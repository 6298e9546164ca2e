import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { fourBlade } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep, traveler } = travelerOperations;

describe('an eddy-current test of a shank', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  let entry: Awaited<ReturnType<Job['entryFor']>>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'technician');
    job = await Job.arrived(shop, 'E4301', await fourBlade(shop, 'E4301'));
    await job.tornDown();
    for (let step = await job.nextAt('blade 1'); !step.title.startsWith('Eddy'); step = await job.nextAt('blade 1'))
      await job.sign(step);
    entry = await job.entryFor(await job.nextAt('blade 1'));
  }, 120_000);
  afterAll(() => shop.close());

  const refused = (changed: object, type: string, status: number, pointer?: string) =>
    expectRefused(
      { shop, visitor: technician },
      { operation: signStep, input: { ...entry, ...changed } },
      { status, type, ...(pointer ? { pointer } : {}) },
    );

  it('is not signed without its set-up, nor with one whose notch gave nothing', async () => {
    await refused({ sheet: undefined }, 'sheet-missing', 422, '/sheet');
    await refused({ sheet: { ...entry.sheet, before: '0' } }, 'sheet-wrong', 422, '/sheet/before');
  });

  it('is not signed as good once the signal drifted beyond what is allowed', async () => {
    const { detail } = await refused({ sheet: { ...entry.sheet, after: '71.9' } }, 'outside-limits', 409);
    expect(detail).toContain('The signal moved by 10.13 %; 10 % is allowed: scan it again.');
    await refused({ sheet: { ...entry.sheet, notchDepth: '0.040' } }, 'outside-limits', 409);
  });

  it('keeps the set-up in the signature, to the very limit of the drift', async () => {
    const signed = await technician.call(signStep, {
      ...entry,
      sheet: { ...entry.sheet, after: '72' },
    } as typeof entry);
    expect(signed.status).toBe(200);
    const { steps } = (await technician.call(traveler, { travelerId: signed.body.travelerId })).body;
    const sheet = steps.find(({ id }) => id === entry.stepId)?.signOffs[0]?.sheet;
    expect(sheet).toMatchObject({ kind: 'eddy-current', reasons: [] });
    expect(sheet?.said).toContainEqual({
      name: 'signal from the notch',
      value: '80 % before, 72 % after, moved by 10 %',
    });
  });
});
