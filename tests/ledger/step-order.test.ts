import { Problem } from '@hubwright/contracts/problems';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { disposeFinding } from '../../apps/server/src/modules/findings/dispose-finding.command.ts';
import { failStep } from '../../apps/server/src/modules/findings/fail-step.command.ts';
import { fitReplacement } from '../../apps/server/src/modules/findings/fit-replacement.command.ts';
import { raiseFinding } from '../../apps/server/src/modules/findings/raise-finding.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { badValues, goodValues, Job } from '../support/job.ts';
import { pin } from '../support/people.ts';
import { ShopApp } from '../support/shop-app.ts';

/** What someone may try next, on whatever is there: `pick` chooses the step or finding. */
type Try =
  | { readonly act: 'sign' | 'fail' | 'raise'; readonly pick: number }
  | { readonly act: 'dispose'; readonly pick: number; readonly as: 'serviceable' | 'repair' | 'reject' };

const tries: fc.Arbitrary<Try> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ act: fc.constant('sign' as const), pick: fc.nat(200) }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('fail' as const), pick: fc.nat(200) }) },
  { weight: 1, arbitrary: fc.record({ act: fc.constant('raise' as const), pick: fc.nat(200) }) },
  {
    weight: 3,
    arbitrary: fc.record({
      act: fc.constant('dispose' as const),
      pick: fc.nat(200),
      as: fc.constantFrom('serviceable' as const, 'repair' as const, 'reject' as const),
    }),
  },
);

/** Runs one try; a refusal is as good an answer as any. */
async function attempt(job: Job, one: Try): Promise<boolean> {
  try {
    await perform(job, one);
    return true;
  } catch (error) {
    if (error instanceof Problem && error.status < 500) return false;
    throw error;
  }
}

async function perform(job: Job, one: Try): Promise<void> {
  if (one.act === 'dispose') return dispose(job, one);
  const steps = await job.reads.travelerStep.findMany({
    where: { traveler: { workOrderId: job.id } },
    orderBy: [{ traveler: { number: 'asc' } }, { sequence: 'asc' }],
    include: { measures: true, traveler: true },
  });
  // Half of the tries go for a step whose turn it is, or nothing would ever be signed.
  const turns = await job.nextSteps();
  const pool = one.pick % 2 === 0 && turns.length > 0 ? turns : steps;
  const step = pool[one.pick % pool.length];
  if (!step) return;
  const found = { area: 'general', damage: 'worn' as const, place: 'somewhere', description: 'found by chance' };
  if (one.act === 'raise') {
    await job.shop.run(raiseFinding, { travelerId: step.travelerId, ...found }, job.people.technician);
  } else if (one.act === 'sign') {
    await job.shop.run(signStep, await job.entryFor(step, goodValues(step)), job.signerOf(step));
  } else {
    await job.shop.run(failStep, { ...(await job.entryFor(step, badValues(step))), ...found }, job.signerOf(step));
  }
}

async function dispose(job: Job, one: Extract<Try, { act: 'dispose' }>): Promise<void> {
  const findings = await job.reads.finding.findMany({ where: { workOrderId: job.id, disposition: null } });
  const finding = findings[one.pick % Math.max(1, findings.length)];
  if (!finding) return;
  const steps = [{ title: `Repair ${finding.number}`, process: 'blade-repair' as const, standardMinutes: 10 }];
  const input = { findingId: finding.id, disposition: one.as, steps: one.as === 'repair' ? steps : [], signature: pin };
  await job.shop.run(disposeFinding, input, job.people.inspector, { version: finding.version });
}

/** Steps of each traveler in order: everything signed lies before everything still open. */
async function expectInOrder(job: Job): Promise<void> {
  const steps = await job.reads.travelerStep.findMany({
    where: { traveler: { workOrderId: job.id }, state: { not: 'not-needed' } },
    orderBy: [{ travelerId: 'asc' }, { sequence: 'asc' }],
  });
  const wrong = steps.filter(
    (step, index) =>
      step.state !== 'open' &&
      steps.slice(0, index).some((before) => before.travelerId === step.travelerId && before.state === 'open'),
  );
  expect(wrong.map(({ title }) => title)).toEqual([]);
  const dates = steps.flatMap(({ signedAt }) => (signedAt ? [signedAt.getTime()] : []));
  expect(dates.length).toBe(steps.filter(({ state }) => state !== 'open').length);
}

describe('whatever is tried in whatever order', () => {
  let shop: ShopApp;
  let count = 0;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
  });
  afterAll(() => shop.close());

  it('no step is ever signed before one that comes first', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(tries, { minLength: 25, maxLength: 40 }), async (sequence) => {
        const job = await Job.arrived(shop, `QR30${String(++count).padStart(2, '0')}`);
        await job.tornDown();
        let accepted = 0;
        for (const one of sequence) if (await attempt(job, one)) accepted += 1;
        await expectInOrder(job);
        expect(accepted).toBeGreaterThan(0);
      }),
      { numRuns: 6, endOnFailure: true },
    );
  }, 180_000);

  it('a rejected blade ends: no more work on it, a new one in the kit, and the replacement keeps its own times', async () => {
    const job = await Job.arrived(shop, 'QR4001');
    await job.tornDown();
    const blade = await job.nextAt('blade 2');
    const raised = await job.shop.run(
      raiseFinding,
      {
        travelerId: blade.travelerId,
        area: 'shank',
        damage: 'cracked',
        place: 'shank, 2 in out',
        description: 'crack indication',
      },
      job.people.technician,
    );
    const reject = { findingId: raised.id, disposition: 'reject' as const, signature: pin };
    await job.shop.run(disposeFinding, reject, job.people.inspector, { version: 1 });
    expect(await job.reads.travelerStep.count({ where: { travelerId: blade.travelerId, state: 'open' } })).toBe(0);
    await expect(job.sign(blade)).rejects.toMatchObject({ type: 'traveler-rejected' });
    const line = await job.reads.kitLine.findFirstOrThrow({
      where: { kitId: job.kitId, position: 'blade 2' },
      include: { part: true },
    });
    expect(line).toMatchObject({ source: 'new', quantity: 1, findingId: raised.id, part: { number: 'Q76-B' } });
    expect(await job.reads.kitLine.count({ where: { kitId: job.kitId, position: 'blade 2' } })).toBe(1);
    expect(
      await job.reads.installation.count({ where: { parentId: job.unitId, position: 'blade 2', toDate: null } }),
    ).toBe(0);
    const itself = {
      ...{ findingId: raised.id, maker: 'Quillon', partNumber: 'Q76-B', serial: 'B2-QR4001' },
      ...{ sinceNewTenths: 0, sinceOverhaulTenths: 0 },
    };
    await expect(job.shop.run(fitReplacement, itself, job.people.technician)).rejects.toMatchObject({
      type: 'part-rejected',
    });
    const fitted = await job.shop.run(
      fitReplacement,
      {
        findingId: raised.id,
        maker: 'Quillon',
        partNumber: 'Q76-B',
        serial: 'nb77',
        sinceNewTenths: 0,
        sinceOverhaulTenths: 'unknown',
      },
      job.people.technician,
    );
    const [times] = await job.reads.timeRecord.findMany({ where: { itemId: fitted.itemId } });
    expect(times).toMatchObject({ sinceNewTenths: 0, sinceOverhaulTenths: null });
    const twice = {
      findingId: raised.id,
      maker: 'Quillon',
      partNumber: 'Q76-B',
      serial: 'NB78',
      sinceNewTenths: 0,
      sinceOverhaulTenths: 0,
    };
    await expect(job.shop.run(fitReplacement, twice, job.people.technician)).rejects.toMatchObject({
      type: 'replacement-known',
    });
  }, 60_000);

  it('a deformed hub in a critical area is not repaired', async () => {
    const job = await Job.arrived(shop, 'QR4002');
    await job.tornDown();
    const hub = await job.nextAt('hub');
    const found = { area: 'blade-socket', damage: 'deformed' as const, place: 'socket 2', description: 'out of round' };
    const raised = await job.shop.run(raiseFinding, { travelerId: hub.travelerId, ...found }, job.people.technician);
    const repair = {
      ...{ findingId: raised.id, disposition: 'repair' as const, signature: pin },
      steps: [{ title: 'Machine socket', process: 'blade-repair' as const, standardMinutes: 60 }],
    };
    await expect(job.shop.run(disposeFinding, repair, job.people.inspector, { version: 1 })).rejects.toMatchObject({
      type: 'repair-not-allowed',
    });
  }, 60_000);
});
