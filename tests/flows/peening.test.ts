import { peeningOperations as op } from '@hubwright/contracts/peening/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { bladeProgram } from '../../seed/data/peening.ts';
import { fourBlade } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const good = [
  { area: 'leading edge', arcHeight: '0.0095' },
  { area: 'trailing edge', arcHeight: '0.0075' },
  { area: 'shank', arcHeight: '0.0105' },
];
const weak = good.map((one) => (one.area === 'trailing edge' ? { ...one, arcHeight: '0.0057' } : one));

describe('a peening machine', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let technician: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, technician] = [await as(shop, 'inspector'), await as(shop, 'technician')];
  });
  afterAll(() => shop.close());

  const machine = async () => (await inspector.call(op.listPeeningMachines, {})).body.rows[0];
  const qualifying = async (changes: object = {}) => {
    const { id: machineId = '', version = 0 } = (await machine()) ?? {};
    const input = { ...bladeProgram, ...changes, machineId, signature: pin };
    return { operation: op.qualifySetup, input, options: { version } };
  };
  const [edge] = bladeProgram.areas;
  const withStrips = (heights: [string, string][], more: object = {}) => ({
    areas: [{ ...edge, strips: heights.map(([time, arcHeight]) => ({ time, arcHeight })), ...more }],
  });
  const refused = async (changes: object, type: string, pointer: string, status = 422) =>
    expectRefused({ shop, visitor: inspector }, await qualifying(changes), { status, type, pointer });

  it('is qualified by strips over time: the curve of each area gives its intensity and its saturation time', async () => {
    const { operation, input, options } = await qualifying();
    const { status, body } = await inspector.call(operation, input, options);
    expect(status).toBe(200);
    expect(body.areas.map(({ name }) => name)).toEqual(['leading edge', 'trailing edge', 'shank']);
    for (const { intensity, saturationTime, low, high, exposure } of body.areas) {
      expect(intensity).toBeGreaterThan(Number(low));
      expect(intensity).toBeLessThan(Number(high));
      expect(saturationTime).toBeLessThan(Number(exposure));
    }
    expect((await machine())?.setups.filter(({ isCurrent }) => isCurrent)).toHaveLength(1);
  });

  it('is not qualified by too few strips, by none at twice saturation, or by an intensity out of its band', async () => {
    await refused(
      withStrips([
        ['2', '0.0058'],
        ['4', '0.0083'],
        ['6', '0.0093'],
      ]),
      'curve-unfit',
      '/areas/0/strips',
    );
    await refused(
      withStrips([
        ['1', '0.0034'],
        ['2', '0.0058'],
        ['3', '0.0073'],
        ['4', '0.0083'],
      ]),
      'curve-unfit',
      '/areas/0/strips',
    );
    const strips = (edge?.strips ?? []).map(({ time, arcHeight }): [string, string] => [
      time,
      (Number(arcHeight) * 1.5).toFixed(5),
    ]);
    await refused(withStrips(strips), 'intensity-outside', '/areas/0/strips', 409);
    const own = (edge?.strips ?? []).map(({ time, arcHeight }): [string, string] => [time, arcHeight]);
    await refused(withStrips(own, { exposure: '2' }), 'exposure-short', '/areas/0/exposure');
    const request = await qualifying();
    await expectRefused({ shop, visitor: technician }, request, { status: 403, type: 'not-permitted' });
  });
});

/** Six blades of two propellers in one lot; its closing strip fails when one is painted and the other propeller is built. */
describe('a lot whose closing strip fails', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let other: Visitor;
  let technician: Visitor;
  let built: Job;
  let painted: Job;
  let lotId: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, technician] = [await as(shop, 'inspector'), await as(shop, 'technician')];
    other = await as(shop, 'sunniva');
    const arrive = async (serial: string) => {
      const whole = await fourBlade(shop, serial);
      const parts = whole.parts?.filter(({ kind }) => kind !== 'clamp') ?? [];
      const job = await Job.arrived(shop, serial, { ...whole, parts });
      await job.inWork();
      for (const position of ['blade 1', 'blade 2', 'blade 3', 'blade 4'])
        for (;;) {
          const step = await job.nextAt(position);
          if (step.peening !== null) break;
          await job.sign(step);
        }
      return job;
    };
    [built, painted] = [await arrive('P4001'), await arrive('P4002')];
  }, 180_000);
  afterAll(() => shop.close());

  const steps = async () => [
    ...(await Promise.all([1, 2, 3, 4].map((n) => built.nextAt(`blade ${n}`)))),
    ...(await Promise.all([1, 2].map((n) => painted.nextAt(`blade ${n}`)))),
  ];
  const setupId = async () =>
    (await inspector.call(op.listPeeningMachines, {})).body.rows[0]?.setups.find(({ isCurrent }) => isCurrent)?.id ??
    '';
  const starting = async (changes: { stepIds?: string[]; opening?: typeof good } = {}) => ({
    operation: op.startPeeningLot,
    input: {
      ...{ setupId: await setupId(), stepIds: changes.stepIds ?? (await steps()).map(({ id }) => id), opening: good },
      ...{ nozzlesChecked: true as const, mediaChecked: true as const, signature: pin },
      ...changes,
    },
  });
  const lot = async () =>
    (await inspector.call(op.listPeeningLots, { show: 'all', limit: 50 })).body.rows.find(({ id }) => id === lotId);
  const version = async () => ({ version: (await lot())?.version ?? 0 });
  const releaseItems = async (job: Job) =>
    (await other.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body.open.map(({ what }) => what);

  it('is not begun by a strip outside its band, without a strip for each area, or alone on a traveler', async () => {
    const missing = await starting({ opening: good.slice(1) });
    await expectRefused({ shop, visitor: technician }, missing, {
      status: 422,
      type: 'strips-missing',
      pointer: '/opening',
    });
    await expectRefused({ shop, visitor: technician }, await starting({ opening: weak }), {
      status: 409,
      type: 'strip-outside',
    });
    const [step] = await steps();
    const alone = { operation: travelerOperations.signStep, input: { stepId: step?.id ?? '', signature: pin } };
    await expectRefused({ shop, visitor: technician }, alone, { status: 409, type: 'peened-in-lots' });
  });

  it('is peened to the coverage asked for, and each part goes on', async () => {
    const { operation, input } = await starting();
    const begun = await technician.call(operation, input);
    expect([begun.status, begun.body.number]).toEqual([200, 'PL-0001']);
    lotId = begun.body.id;
    await expectRefused({ shop, visitor: technician }, await starting(), { status: 409, type: 'in-other-lot' });
    const coverage = good.map(({ area }) => ({ area, percent: 100 }));
    const short = coverage.map((one, index) => (index === 1 ? { ...one, percent: 92 } : one));
    const sign = {
      operation: op.signPeeningLot,
      input: { lotId, coverage: short, signature: pin },
      options: await version(),
    };
    await expectRefused({ shop, visitor: technician }, sign, {
      status: 409,
      type: 'coverage-short',
      pointer: '/coverage/1/percent',
    });
    const signed = await technician.call(op.signPeeningLot, { lotId, coverage, signature: pin }, await version());
    expect(signed.body.signOffIds).toHaveLength(6);
    // One blade is painted, the other propeller is built, before anyone reads the closing strips.
    for (;;) {
      const next = await painted.nextAt('blade 1');
      await painted.sign(next);
      if (next.title === 'Paint, mating faces masked') break;
    }
    await built.signed('repair');
    await built.takenOff();
    await built.filled();
    await built.signed('build');
    expect(await releaseItems(built)).toContain('Peening lot PL-0001 has no closing strips');
  }, 120_000);

  it('holds every blade of it where it is, and keeps the release shut', async () => {
    const closed = await technician.call(op.closePeeningLot, { lotId, closing: weak, signature: pin }, await version());
    expect(closed.body).toMatchObject({
      state: 'held',
      reasons: ['trailing edge, after: 0.0057 is outside 0.006 to 0.009.'],
    });
    const next = await painted.nextAt('blade 1');
    const sign = { operation: travelerOperations.signStep, input: await painted.entryFor(next) };
    await expectRefused({ shop, visitor: inspector }, sign, { status: 409, type: 'peening-held' });
    expect(await releaseItems(built)).toContainEqual(
      expect.stringContaining('Peening lot PL-0001 is held: trailing edge, after'),
    );
    expect(await releaseItems(painted)).toContainEqual(expect.stringContaining('PL-0001 is held'));
    // A blade that was not in the lot goes on.
    const free = await painted.nextAt('blade 3');
    const { steps: shown } = (await inspector.call(travelerOperations.traveler, { travelerId: free.travelerId })).body;
    expect(shown.find(({ id }) => id === free.id)?.blocked).toBeNull();
  });

  it('begins no lot with that program before it is qualified again', async () => {
    const free = [await painted.nextAt('blade 3'), await painted.nextAt('blade 4')];
    const stepIds = free.map(({ id }) => id);
    await expectRefused({ shop, visitor: technician }, await starting({ stepIds }), {
      status: 409,
      type: 'setup-doubtful',
    });
    const [machine] = (await inspector.call(op.listPeeningMachines, {})).body.rows;
    const again = { ...bladeProgram, machineId: machine?.id ?? '', signature: pin };
    expect((await inspector.call(op.qualifySetup, again, { version: machine?.version ?? 0 })).status).toBe(200);
    expect(
      machine?.history
        .filter(({ when, area }) => when === 'closing' && area === 'trailing edge')
        .map(({ arcHeight }) => arcHeight),
    ).toEqual(['0.0057']);
  });

  it('is peened again by an inspector’s decision, and released by strips that hold', async () => {
    const again = { lotId, reason: 'Air pressure had dropped', signature: pin };
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.peenAgain, input: again, options: await version() },
      { status: 403, type: 'not-permitted' },
    );
    const decided = await inspector.call(op.peenAgain, again, await version());
    expect([decided.status, decided.body.steps]).toEqual([200, 6]);
    // Nothing is peened through paint: what was painted since is stripped first.
    const back = await steps();
    expect(back.map(({ title, attempt }) => [title, attempt])).toEqual([
      ...Array.from({ length: 5 }, () => ['Strip paint and clean, again after PL-0001', 2]),
      ['Peen edges and shank, again after PL-0001', 2],
    ]);
    for (const step of back.slice(0, 4)) await built.sign(step);
    for (const step of back.slice(4, 5)) await painted.sign(step);
    await built.peened((await steps()).map(({ id }) => id));
    expect((await releaseItems(built)).filter((what) => what.startsWith('Peening lot'))).toEqual([]);
    expect(await releaseItems(built)).toContainEqual(expect.stringContaining('Leak test, again after PL-0001'));
    expect((await painted.nextAt('blade 1')).title).toBe('Anodise, again after PL-0001');
  });
});
