import { findingOperations } from '@hubwright/contracts/findings/operations';
import { travelerOperations as op } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { fourBladeWithCounterweights } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/** Two steel counterweights are plated; one is baked in time and one late. */
describe('a relief bake after plating', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  let platedAt: number;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    technician = await as(shop, 'technician');
    job = await Job.arrived(shop, 'K4001', await fourBladeWithCounterweights(shop, 'K4001'));
    await job.inWork();
  }, 120_000);
  afterAll(() => shop.close());

  const hour = 3_600_000;
  const instant = (hours: number) => new Date(platedAt + hours * hour).toISOString();
  /** Begun so long after plating, within the band for 23 hours. */
  const bake = (begun: number, held = 23) => ({
    kind: 'bake' as const,
    startedAt: instant(begun),
    chart: [
      { at: instant(begun), temperature: '75' },
      { at: instant(begun + 0.5), temperature: '350' },
      { at: instant(begun + 1), temperature: '375' },
      { at: instant(begun + held), temperature: '375' },
      { at: instant(begun + held + 0.5), temperature: '350' },
      { at: instant(begun + held + 1), temperature: '120' },
    ],
  });
  const baking = async (position: string, entry?: ReturnType<typeof bake>) => {
    const { id: stepId } = await job.nextAt(position);
    return { operation: op.signStep, input: { stepId, ...(entry ? { sheet: entry } : {}), signature: pin } };
  };

  it('is not signed before anything is plated, and has its last beginning on the bench from the plating on', async () => {
    for (const position of ['counterweight 1', 'counterweight 2']) {
      const plate = await job.nextAt(position);
      expect(plate.title).toBe('Cadmium plate');
      await shop.run(signStep, await job.entryFor(plate), job.people.technician);
    }
    const signed = await job.reads.signOff.findFirstOrThrow({
      where: { step: { title: 'Cadmium plate' } },
      orderBy: { performedAt: 'desc' },
    });
    platedAt = signed.performedAt.getTime();
    const board = (await technician.call(op.benchBoard, { limit: 100, process: 'plating' })).body;
    const bakes = board.mine.filter(({ title }) => title === 'Relief bake');
    expect(bakes).toHaveLength(2);
    for (const { bake: clock } of bakes) {
      expect(clock).toMatchObject({ startWithinMinutes: 240, minimumMinutes: 1380, begun: null });
      expect(Math.abs(Date.parse(clock?.platedAt ?? '') - platedAt)).toBeLessThan(60_000);
    }
  });

  it('is signed with its chart, once it has ended', async () => {
    await expectRefused({ shop, visitor: technician }, await baking('counterweight 1'), {
      status: 422,
      type: 'sheet-missing',
      pointer: '/sheet',
    });
    await expectRefused({ shop, visitor: technician }, await baking('counterweight 1', bake(3)), {
      status: 422,
      type: 'sheet-wrong',
      pointer: '/sheet/chart',
    });
    clock.seconds += 30 * 3_600;
    technician = await as(shop, 'technician');
    const { operation, input } = await baking('counterweight 1', bake(3));
    const signed = await technician.call(operation, input);
    expect([signed.status, signed.body]).toEqual([200, signed.body]);
    const { content } = await job.reads.signOff.findUniqueOrThrow({ where: { id: signed.body.signOffId } });
    expect(JSON.parse(content).sheet.verdict).toMatchObject({ good: true, lateByMinutes: 0, holdMinutes: 1380 });
  });

  it('begun late, or held too short, is never signed as good: it fails, and a finding decides', async () => {
    const late = await expectRefused({ shop, visitor: technician }, await baking('counterweight 2', bake(4.5)), {
      ...{ status: 409, type: 'outside-limits' },
    });
    expect(late.detail).toContain('The bake began 30 min too late');
    await expectRefused({ shop, visitor: technician }, await baking('counterweight 2', bake(3, 20)), {
      status: 409,
      type: 'outside-limits',
    });
    const { input } = await baking('counterweight 2', bake(4.5));
    const found = { area: 'general', damage: 'other' as const, place: 'plating', description: 'baked late' };
    const failed = await technician.call(findingOperations.failStep, { ...input, ...found });
    expect([failed.status, failed.body]).toEqual([200, failed.body]);
    const { state } = await job.reads.travelerStep.findUniqueOrThrow({ where: { id: input.stepId } });
    expect(state).toBe('failed');
    // A good bake is not signed as a bad one either.
    const good = await job.nextAt('counterweight 1');
    expect(good.title).toBe('Chromate');
  });
});
