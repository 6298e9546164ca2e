import { findingOperations } from '@hubwright/contracts/findings/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { moveFrozenLot } from '../../apps/server/src/modules/inventory/move-frozen-lot.command.ts';
import { composite } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const minute = 60_000;
const hours = 3_600;
type Point = readonly [minutes: number, temperature: number, vacuum?: number];

/** A composite blade is laid up, cured and tapped; another one's film was out of the freezer too long. */
describe('the cure of a composite repair', () => {
  const clock = new MovedClock();
  let shop: ShopApp;
  let technician: Visitor;
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    technician = await as(shop, 'technician');
    job = await Job.arrived(shop, 'C5101', await composite(shop, 'C5101'));
    await job.inWork();
  }, 180_000);
  afterAll(() => shop.close());

  const refused = (request: Parameters<typeof expectRefused>[1], status: number, type: string, pointer?: string) =>
    expectRefused({ shop, visitor: technician }, request, { status, type, ...(pointer ? { pointer } : {}) });
  const upTo = async (position: string, title: string) => {
    for (;;) {
      const step = await job.nextAt(position);
      if (step.title === title) return step;
      await job.sign(step);
    }
  };
  const later = async (seconds: number) => {
    clock.seconds += seconds;
    technician = await as(shop, 'technician');
  };
  /** Points in minutes from the beginning of a chart that ends now. */
  const chart = (...points: Point[]) => {
    const start = clock.now().getTime() - (points.at(-1)?.[0] ?? 0) * minute - 1_000;
    return points.map(([minutes, temperature, vacuum = 25]) => ({
      at: new Date(start + minutes * minute).toISOString(),
      ...{ temperature: String(temperature), vacuum: String(vacuum) },
    }));
  };
  const good = () => chart([0, 70], [40, 250], [145, 250], [175, 130]);
  const sign = (stepId: string, entry: object) => ({
    operation: travelerOperations.signStep,
    input: { stepId, sheet: { kind: 'cure' as const, chart: good(), ...entry }, signature: pin },
  });

  it('is refused while its chart is none: of another cure, another scale, backwards, without vacuum, in the future', async () => {
    const { id } = await upTo('blade 1', 'Cure the repair');
    const earlier = good().map((one) => ({
      ...one,
      at: new Date(Date.parse(one.at) - 24 * 60 * minute).toISOString(),
    }));
    const other = await refused(sign(id, { chart: earlier }), 422, 'sheet-wrong', '/sheet/chart');
    expect(other.detail).toContain('before “Fill and lay up” was done');
    await later(4 * hours);
    await refused(sign(id, { chart: [...good()].reverse() }), 422, 'sheet-wrong', '/sheet/chart');
    await refused(sign(id, { chart: good().slice(0, 1) }), 422, 'invalid-input', '/sheet/chart');
    const bare = good().map(({ at, temperature }) => ({ at, temperature }));
    await refused(sign(id, { chart: bare }), 422, 'sheet-wrong', '/sheet/chart');
    const celsius = chart([0, 21], [40, 121], [145, 121], [175, 54]);
    await refused(sign(id, { chart: celsius }), 422, 'sheet-wrong', '/sheet/chart');
    const ahead = good().map((one) => ({ ...one, at: new Date(Date.parse(one.at) + 60 * minute).toISOString() }));
    await refused(sign(id, { chart: ahead }), 422, 'sheet-wrong', '/sheet/chart');
  });

  it('is not good heated too fast, held short, dipped or let go of its vacuum: each is named', async () => {
    const { id } = await job.nextAt('blade 1');
    const why = async (...points: Point[]) =>
      (await refused(sign(id, { chart: chart(...points) }), 409, 'outside-limits')).detail;
    expect(await why([0, 70], [20, 250], [145, 250], [175, 130])).toMatch(/Heated at 9 °F\/min/);
    expect(await why([0, 70], [40, 250], [120, 250], [150, 130])).toMatch(/90 are asked for/);
    expect(await why([0, 70], [40, 250], [90, 250], [95, 230], [100, 250], [150, 250], [180, 130])).toMatch(
      /90 are asked for/,
    );
    expect(await why([0, 70], [40, 250], [100, 250, 15], [145, 250], [175, 130])).toMatch(/Vacuum of 15 inHg/);
    expect(await why([0, 70], [40, 250], [145, 250], [155, 130])).toMatch(/Cooled at 12 °F\/min/);
  });

  it('is signed with its chart and with the lots laid up for it, each with what is left of its out-time', async () => {
    const { id, travelerId } = await job.nextAt('blade 1');
    const { operation, input } = sign(id, {});
    const signed = await technician.call(operation, input);
    expect([signed.status, signed.body]).toEqual([200, signed.body]);
    const { steps } = (await technician.call(travelerOperations.traveler, { travelerId })).body;
    const sheet = steps.find((step) => step.id === id)?.signOffs[0]?.sheet;
    expect(sheet?.said).toContainEqual({
      name: 'material',
      value: expect.stringMatching(/^LM-PR7 .*: out 0 h, 240 h left$/),
    });
    expect(sheet?.drawn).toMatchObject({ kind: 'heat', points: input.sheet.chart });
    expect((await job.nextAt('blade 1')).title).toBe('Tap map after repair');
  });

  it('of a lot that was out too long when it began fails, and a finding decides', async () => {
    const { id } = await upTo('blade 2', 'Cure the repair');
    const { lotIds } = await job.reads.signOff.findFirstOrThrow({
      where: { step: { travelerId: (await job.nextAt('blade 2')).travelerId, title: 'Fill and lay up' } },
    });
    const lot = await job.reads.lot.findUniqueOrThrow({ where: { id: lotIds[0] ?? '' } });
    await shop.run(moveFrozenLot, { lotId: lot.id, to: 'out' }, job.people.clerk, { version: lot.version });
    await later(245 * hours);
    const entry = sign(id, {});
    const problem = await refused(entry, 409, 'outside-limits');
    expect(problem.detail).toMatch(/was out for 24\d(\.\d)? h when the cure began; 240 h are allowed/);
    const found = { area: 'general', damage: 'other' as const, place: 'patch', description: 'cured too late' };
    expect((await technician.call(findingOperations.failStep, { ...entry.input, ...found })).status).toBe(200);
  });
});
