// size: one story told in order, from the peening machine to the log of the aircraft; each step stands on the one before

import { customerOperations } from '@hubwright/contracts/customers/operations';
import { fieldBalanceOperations as field } from '@hubwright/contracts/field-balance/operations';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { governorOperations } from '@hubwright/contracts/governor-tests/operations';
import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import { peeningOperations as peening } from '@hubwright/contracts/peening/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { bakeOperations } from '@hubwright/contracts/work-orders/bake-operations';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { installFromTray } from '../../apps/server/src/modules/kits/install-from-tray.command.ts';
import { issueLot } from '../../apps/server/src/modules/kits/issue-lot.command.ts';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { recordCarried } from '../../apps/server/src/modules/work-orders/record-carried.command.ts';
import { sheet as fieldSheet, pinnaceRotor, readingsWith } from '../../seed/data/field-balance.ts';
import { bladeProgram, goodCheck, shot } from '../../seed/data/peening.ts';
import { fourBlade, readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { atTheBench, BenchRun, beginning, governor } from '../support/governor-visit.ts';
import { Job } from '../support/job.ts';
import { fourBladeContent } from '../support/manual-content.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { analyser, planning, weightsOnShelf } from '../support/on-aircraft.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const hour = 3_600_000;
const blades = ['blade 1', 'blade 2', 'blade 3', 'blade 4'];
const strips = [
  { area: 'leading edge', arcHeight: '0.0095' },
  { area: 'trailing edge', arcHeight: '0.0075' },
  { area: 'shank', arcHeight: '0.0105' },
];
const weak = strips.map((one) => (one.area === 'trailing edge' ? { ...one, arcHeight: '0.0057' } : one));

/** Two four-blade propellers: six blades in one peening lot, their steel clamps plated in the shop, one of them built, released and balanced at an airport. */
describe('the benches, from the peening machine to the log of the aircraft', () => {
  const clock = MovedClock.inTheMorning();
  let shop: ShopApp;
  let technician: Visitor;
  let inspector: Visitor;
  let releaser: Visitor;
  let desk: Visitor;
  let built: Job;
  let other: Job;
  let setupId: string;
  let lotId: string;
  let releaseId: string;
  /** Everyone signs in anew: a session does not outlast a night. */
  const everyone = async () => {
    [technician, inspector] = [await as(shop, 'technician'), await as(shop, 'inspector')];
    [releaser, desk] = [await as(shop, 'sunniva'), await as(shop, 'front-desk')];
  };
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    await everyone();
    await platedInHouse();
    const { id: aircraftId } = await aircraft();
    const arrive = async (serial: string) => {
      const job = await Job.arrived(shop, serial, { ...(await fourBlade(shop, serial)), aircraftId });
      await job.inWork();
      return job;
    };
    [built, other] = [await arrive('BS4001'), await arrive('BS4002')];
  }, 240_000);
  afterAll(() => shop.close());

  /** The revision of a shop that plates and bakes its clamps itself. */
  async function platedInHouse(): Promise<void> {
    const content = await fourBladeContent(shop);
    const inHouse = content.routes
      .find(({ partClass }) => partClass === 'counterweight')
      ?.steps.filter(({ phase }) => phase === 'repair');
    const routes = content.routes.map((route) =>
      route.title === 'Blade clamp'
        ? { ...route, steps: [...route.steps.filter(({ phase }) => phase !== 'repair'), ...(inHouse ?? [])] }
        : route,
    );
    const reads = readsOf(shop);
    const { id: modelId } = await reads.unitModel.findFirstOrThrow({ where: { designation: 'Q4F-84' } });
    const { revision } = await reads.bladeRules.findFirstOrThrow({ where: { modelId }, include: { revision: true } });
    const models = [{ ...content, routes, modelId, tboRules: [], lifeLimits: [] }];
    const issued = { manualId: revision.manualId, revision: '4', issuedOn: day(-1), models };
    await shop.run(issueRevision, issued as never, await actorOf(shop, 'inspector'));
  }
  async function aircraft() {
    const { body: customers } = await desk.call(customerOperations.listCustomers, { search: 'brackenmoor', limit: 5 });
    const customerId = customers.rows[0]?.id ?? '';
    const one = { customerId, registration: 'ZZ-STC', airframe: 'Orrick Stormcrane', engine: 'Marl T6' };
    return (await desk.call(customerOperations.addAircraft, one)).body;
  }

  const refused = (
    request: Parameters<typeof expectRefused>[1],
    refusal: Parameters<typeof expectRefused>[2],
    visitor = technician,
  ) => expectRefused({ shop, visitor }, request, refusal);
  const signing = async (job: Job, position: string) => ({
    operation: travelerOperations.signStep,
    input: await job.entryFor(await job.nextAt(position)),
  });
  const open = async (job: Job) =>
    (await releaser.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body.open.map(
      ({ what }) => what,
    );
  const lot = async () =>
    (await inspector.call(peening.listPeeningLots, { show: 'all', limit: 50 })).body.rows.find(
      ({ id }) => id === lotId,
    );
  const version = async () => ({ version: (await lot())?.version ?? 0 });
  const paper = async (path: string) => {
    const answer = await fetch(shop.address + path, { headers: { cookie: technician.cookie } });
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    return (await readPdf(Buffer.from(await answer.arrayBuffer()))).text;
  };
  const upTo = async (job: Job, position: string, title: string) => {
    for (let step = await job.nextAt(position); step.title !== title; step = await job.nextAt(position))
      await job.sign(step);
  };

  it('a peening machine is put on record, its shot checked, its program qualified for both edges', async () => {
    const machine = { code: 'PEEN-02', title: 'Second cabinet' };
    const { body: added } = await inspector.call(peening.addPeeningMachine, machine);
    const qualify = { ...bladeProgram, machineId: added.id, signature: pin };
    const early = { operation: peening.qualifySetup, input: qualify, options: { version: added.version } };
    await refused(early, { status: 409, type: 'media-missing' }, inspector);
    const media = await technician.call(mediaOperations.addPeeningMedia, {
      ...{ ...shot, code: 'SH-2300', machineId: added.id },
    });
    expect(media.status).toBe(200);
    const check = { mediaId: media.body.id, ...goodCheck(), signature: pin };
    const checked = await technician.call(mediaOperations.checkPeeningMedia, check, { version: media.body.version });
    expect(checked.status).toBe(200);
    const [now] = (await inspector.call(peening.listPeeningMachines, {})).body.rows.filter(
      ({ code }) => code === 'PEEN-02',
    );
    const qualified = await inspector.call(peening.qualifySetup, qualify, { version: now?.version ?? 0 });
    expect([qualified.status, qualified.body]).toEqual([200, qualified.body]);
    setupId = qualified.body.setupId;
    const edges = qualified.body.areas.filter(({ name }) => name.endsWith('edge'));
    expect(edges.map(({ name, low, high }) => [name, low, high])).toEqual([
      ['leading edge', '0.0080', '0.0110'],
      ['trailing edge', '0.0060', '0.0090'],
    ]);
    for (const { intensity, low, high } of edges) {
      expect(intensity).toBeGreaterThan(Number(low));
      expect(intensity).toBeLessThan(Number(high));
    }
    expect(await paper(`/api/peening/setups/${setupId}/pdf`)).toContain('trailing edge');
  });

  it('six blades of both are peened in one lot', async () => {
    for (const position of blades) {
      await upTo(built, position, 'Peen edges and shank');
      await upTo(other, position, 'Peen edges and shank');
    }
    const six = [...blades.map((n) => built.nextAt(n)), ...blades.slice(0, 2).map((n) => other.nextAt(n))];
    const stepIds = (await Promise.all(six)).map(({ id }) => id);
    const checked = { nozzlesChecked: true, mediaChecked: true } as const;
    const started = await technician.call(peening.startPeeningLot, {
      ...{ setupId, stepIds, opening: strips, ...checked, signature: pin },
    });
    expect([started.status, started.body]).toEqual([200, started.body]);
    lotId = started.body.id;
    const coverage = strips.map(({ area }) => ({ area, percent: 100 }));
    const signed = await technician.call(
      peening.signPeeningLot,
      { lotId, coverage, signature: pin },
      { version: started.body.version },
    );
    expect(signed.body.signOffIds).toHaveLength(6);
  }, 120_000);

  it('clamps are plated; four go into the oven in time, one late, and the late one is never signed as good', async () => {
    const clamps = [1, 2, 3, 4].map((n) => `clamp ${n}`);
    for (const clamp of clamps) await upTo(built, clamp, 'Relief bake');
    await upTo(other, 'clamp 1', 'Relief bake');
    const plated = clock.now().getTime();
    const at = (hours: number) => new Date(plated + hours * hour).toISOString();
    const goOn = async (hours: number) => {
      clock.seconds += hours * 3_600;
      await everyone();
    };
    await goOn(3);
    for (const clamp of clamps) {
      const { id: stepId } = await built.nextAt(clamp);
      const begun = await technician.call(bakeOperations.beginBake, {
        stepId,
        oven: 'Oven 1',
        begunAt: at(3),
        lateReason: 'entered after the door was shut',
      });
      expect([begun.status, begun.body]).toMatchObject([200, { bakes: [{ lateByMinutes: 0 }] }]);
    }
    await goOn(1.5);
    const { id: lateId } = await other.nextAt('clamp 1');
    const late = await technician.call(bakeOperations.beginBake, { stepId: lateId, oven: 'Oven 2' });
    expect(late.body.bakes[0]?.lateByMinutes).toBeGreaterThan(25);
    const { bakes } = { bakes: await built.reads.ovenBake.findMany({ where: { stands: true } }) };
    const charted = (stepId: string) => {
      const from = bakes.find((one) => one.stepId === stepId)?.begunAt.getTime() ?? 0;
      const points = [
        [0, '75'],
        [0.5, '350'],
        [1, '375'],
        [24, '375'],
        [25, '120'],
      ] as const;
      const chart = points.map(([hours, temperature]) => ({
        at: new Date(from + hours * hour).toISOString(),
        temperature,
      }));
      return { kind: 'bake' as const, startedAt: new Date(from).toISOString(), chart };
    };
    await goOn(26);
    for (const clamp of clamps) {
      const { id: stepId } = await built.nextAt(clamp);
      const input = { stepId, sheet: charted(stepId), signature: pin };
      const signed = await technician.call(travelerOperations.signStep, input);
      expect([signed.status, signed.body]).toEqual([200, signed.body]);
    }
    const entry = { stepId: lateId, sheet: charted(lateId), signature: pin };
    const { detail } = await refused(
      { operation: travelerOperations.signStep, input: entry },
      { status: 409, type: 'outside-limits' },
    );
    expect(detail).toContain('too late');
    const found = { area: 'general', damage: 'other' as const, place: 'plating', description: 'baked late' };
    expect((await technician.call(findingOperations.failStep, { ...entry, ...found })).status).toBe(200);
    expect(await open(other)).toContainEqual(expect.stringContaining('has no disposition'));
  }, 120_000);

  it('one of the propellers is built: its angles are set at both stops, its washers are whole', async () => {
    await upTo(other, 'blade 1', 'Measure static moment');
    await built.signed('repair');
    await built.takenOff();
    await built.filled();
    for (const blade of blades) {
      const races = { kind: 'matched-set', place: `${blade} race halves`, value: `M-${blade}`, basis: 'new' } as const;
      const input = { workOrderId: built.id, itemId: built.unitId, ...races };
      await shop.run(recordCarried, input, built.people.technician);
    }
    await upTo(built, 'assembly', 'Set blade angles');
    const angles = await built.entryFor(await built.nextAt('assembly'));
    const read = angles.sheet as EntryOf<'angles'>;
    expect(read.readings).toHaveLength(8);
    const twisted = read.readings.map((one) =>
      one.blade === 3 && one.stop === 'feather' ? { ...one, angle: '87.40' } : one,
    );
    const { detail } = await refused(
      { operation: travelerOperations.signStep, input: { ...angles, sheet: { ...read, readings: twisted } } },
      { status: 409, type: 'outside-limits' },
    );
    expect(detail).toContain('Blade 3 at the feather stop: 87.40°');
    expect((await technician.call(travelerOperations.signStep, angles)).status).toBe(200);

    await upTo(built, 'assembly', 'Static balance, vertical and horizontal');
    const line = await built.reads.kitLine.findFirstOrThrow({
      where: { kitId: built.kitId, part: { number: 'Q-BW-1' } },
    });
    const put = { kitId: built.kitId, lineId: line.id, lotCode: await built.onShelf(line.partId, 4), quantity: 4 };
    await shop.run(issueLot, put, built.people.clerk);
    await shop.run(installFromTray, put, built.people.technician);
    const level = { heavy: 'level' } as const;
    const balanced = await built.entryFor(await built.nextAt('assembly'));
    const sheet = {
      ...{ kind: 'static-balance', found: [], placed: [{ place: 'W7', part: 'Q-BW-1', pieces: 4 }] },
      before: { vertical: { heavy: 'right', weight: '24', radius: '5' }, horizontal: level },
      after: { vertical: { heavy: 'right', weight: '2', radius: '5' }, horizontal: level },
    } as const;
    const half = { ...sheet, placed: [{ place: 'W7', part: 'Q-BW-1', pieces: 3.5 }] };
    await refused(
      { operation: travelerOperations.signStep, input: { ...balanced, sheet: half } as never },
      { status: 422, type: 'invalid-input', pointer: '/sheet/placed/0/pieces' },
    );
    const answer = await technician.call(travelerOperations.signStep, { ...balanced, sheet } as never);
    expect([answer.status, answer.body]).toEqual([200, answer.body]);
    await shop.run(closeBuild, { workOrderId: built.id, signature: pin }, built.people.technician);
    const traveler = await built.reads.traveler.findFirstOrThrow({
      where: { workOrderId: built.id, position: 'assembly' },
    });
    const text = await paper(`/api/travelers/${traveler.id}/pdf`);
    for (const words of ['feather stop: blade 1 86', 'W7: 4 × Q-BW-1']) expect(text).toContain(words);
  }, 120_000);

  it('the closing strip of the trailing edge fails: every gate holds, at the painted blade and at the built propeller', async () => {
    await built.signed('final');
    const release = async () => ({
      operation: releaseOperations.approveRelease,
      input: { workOrderId: built.id, signature: pin },
      options: { version: (await built.workOrder()).version },
    });
    expect(await open(built)).toEqual([expect.stringContaining('has no closing strips')]);
    await refused(await release(), { status: 409, type: 'release-blocked' }, releaser);
    const closed = await technician.call(
      peening.closePeeningLot,
      { lotId, closing: weak, signature: pin },
      await version(),
    );
    expect(closed.body).toMatchObject({ state: 'held' });
    expect(closed.body.reasons).toHaveLength(1);
    await refused(await release(), { status: 409, type: 'release-blocked' }, releaser);
    expect(await open(built)).toEqual([expect.stringContaining('is held: trailing edge, after')]);
    await refused(await signing(other, 'blade 1'), { status: 409, type: 'peening-held' });
    await refused(await signing(other, 'blade 2'), { status: 409, type: 'peening-held' });
    const free = (await other.nextAt('blade 3')).id;
    const again = { setupId, stepIds: [free], opening: strips, nozzlesChecked: true, mediaChecked: true } as const;
    await refused(
      { operation: peening.startPeeningLot, input: { ...again, signature: pin } },
      { status: 409, type: 'setup-doubtful' },
    );
    expect(await paper(`/api/peening/lots/${lotId}/pdf`)).toContain('0.0057');
  });

  it('the machine is qualified again, the lot peened again between good strips, and the release opens', async () => {
    const [machine] = (await inspector.call(peening.listPeeningMachines, {})).body.rows.filter(
      ({ code }) => code === 'PEEN-02',
    );
    const qualify = { ...bladeProgram, machineId: machine?.id ?? '', signature: pin };
    expect((await inspector.call(peening.qualifySetup, qualify, { version: machine?.version ?? 0 })).status).toBe(200);
    const decision = { lotId, reason: 'Air pressure had dropped', signature: pin };
    expect((await inspector.call(peening.peenAgain, decision, await version())).body.steps).toBe(6);
    // Nothing is peened through paint: a painted blade is stripped first, and painted again; what was built on them is built again.
    const painted = ['blade 1', 'blade 2', 'blade 3', 'blade 4'];
    for (const blade of painted) {
      const strip = await built.nextAt(blade);
      expect(strip.title).toBe('Strip paint and clean, again after PL-0001');
      await built.sign(strip);
    }
    await other.sign(await other.nextAt('blade 1'));
    const six = [...blades.map((n) => built.nextAt(n)), ...blades.slice(0, 2).map((n) => other.nextAt(n))];
    const steps = await Promise.all(six);
    expect(new Set(steps.map(({ title }) => title))).toEqual(new Set(['Peen edges and shank, again after PL-0001']));
    await built.peened(steps.map(({ id }) => id));
    const back = await open(built);
    for (const title of ['Paint, mating faces masked', 'Set blade angles', 'Static balance', 'Final inspection'])
      expect(back).toContainEqual(expect.stringContaining(`: ${title}`));
    const seals = await built.reads.shopCostPart.findMany({ where: { workOrderId: built.id } });
    expect(seals.map(({ position }) => position)).toContain('blade 3 shank O-ring');
    await built.signed('repair');
    for (const { kitLineId, partId, quantity } of seals) {
      const put = { kitId: built.kitId, lineId: kitLineId, lotCode: await built.onShelf(partId, quantity), quantity };
      await shop.run(issueLot, put, built.people.clerk);
      await shop.run(installFromTray, put, built.people.technician);
    }
    await upTo(built, 'assembly', 'Static balance, vertical and horizontal, again after PL-0001');
    const again = await built.entryFor(await built.nextAt('assembly'));
    const placed = [{ place: 'W7', part: 'Q-BW-1', pieces: 4 }];
    const light = { vertical: { heavy: 'right', weight: '3', radius: '5' }, horizontal: { heavy: 'level' } } as const;
    const sheet = { kind: 'static-balance', before: light, found: placed, placed, after: light } as const;
    expect((await technician.call(travelerOperations.signStep, { ...again, sheet })).status).toBe(200);
    await shop.run(closeBuild, { workOrderId: built.id, signature: pin }, built.people.technician);
    await built.signed('final');
    expect(await open(built)).toEqual([]);
    expect(await open(other)).not.toContainEqual(expect.stringContaining('eening lot'));
    const { version: at } = await built.workOrder();
    const released = await releaser.call(
      releaseOperations.approveRelease,
      { workOrderId: built.id, signature: pin },
      { version: at },
    );
    expect([released.status, released.body]).toMatchObject([200, { word: 'overhauled' }]);
    releaseId = released.body.releaseId;
    expect(await paper(`/api/releases/${releaseId}/pdf`)).toContain('BS4001');
  });

  it('is balanced on its aircraft at an airport as an order of its own, which no release waited for', async () => {
    const planned = await desk.call(field.planFieldBalance, await planning(built));
    expect([planned.status, planned.body]).toEqual([200, planned.body]);
    const fieldBalanceId = planned.body.id;
    const detail = async () => (await technician.call(field.fieldBalance, { fieldBalanceId })).body;
    const now = async () => ({ version: (await detail()).version });
    const setUp = { fieldBalanceId, ...fieldSheet, instrumentId: await analyser(shop), signature: pin };
    expect((await technician.call(field.signFieldSetUp, setUp, await now())).status).toBe(200);
    const speeds = pinnaceRotor.speeds.map((speed) => ({ ...speed, rpm: 1_700 }));
    const run = async (kind: 'baseline' | 'trial' | 'check', weights: [number, number][], more: object = {}) => {
      const readings = readingsWith({ ...pinnaceRotor, speeds }, weights);
      const answer = await technician.call(
        field.recordFieldRun,
        { fieldBalanceId, kind, readings, ...more },
        await now(),
      );
      expect([answer.status, answer.body]).toEqual([200, answer.body]);
    };
    await run('baseline', []);
    await run('trial', [[10, 45]], { trial: { mass: '10', place: 'H3' } });
    const bolt = await weightsOnShelf(built, 'Q-DW-B2', 6);
    const washer = await weightsOnShelf(built, 'Q-DW-W1', 20);
    const lots: Record<string, string> = { 'Q-DW-B2': bolt, 'Q-DW-W1': washer };
    const { fillings } = (await detail()).answer?.beside ?? { fillings: [] };
    const weights = fillings.flatMap(({ place, pieces }) =>
      pieces.map(({ partNumber, count }) => ({ place, lotCode: lots[partNumber] ?? '', pieces: count })),
    );
    expect(weights.length).toBeGreaterThan(0);
    const fitted = await technician.call(field.fitFieldWeights, { fieldBalanceId, weights }, await now());
    expect([fitted.status, fitted.body]).toEqual([200, fitted.body]);
    const { standing } = await detail();
    await run(
      'check',
      standing.map(({ mass, angle }): [number, number] => [mass, angle]),
    );
    expect((await detail()).open).toEqual([]);
    const sign = { fieldBalanceId, remarks: '', signature: pin };
    expect((await technician.call(field.signFieldBalance, sign, await now())).status).toBe(200);
    const release = { fieldBalanceId, signature: pin };
    expect((await inspector.call(field.releaseFieldBalance, release, await now())).status).toBe(200);
    expect(await paper(`/api/field-balances/${fieldBalanceId}/record.pdf`)).toContain('ZZ-STC');
  });

  it('a governor passes through two stops, one of them once out of limits, and its certificate prints', async () => {
    const job = await atTheBench(shop, 'BS9001', await governor(shop, 'Heronby Courser 4'));
    technician = await as(shop, 'tobit');
    const step = await job.nextAt('assembly');
    expect(await open(job)).toContainEqual(expect.stringContaining('Test on the bench'));
    const run = await BenchRun.begin(job, technician);
    const [high, low] = [run.point('high-stop'), run.point('low-stop')];
    await run.takeAll();
    expect(await run.take(high, { value: '2440' })).toMatchObject({ pass: false, out: [high.name] });
    await refused(await run.ending('passed'), { status: 409, type: 'run-not-whole' });
    const screw = { runId: run.id, what: 'high speed stop screw', before: 'as received', after: 'half a turn in' };
    const { body } = await technician.call(governorOperations.recordGovernorAdjustment, screw);
    expect(body.reopened).toEqual([high.name, low.name]);
    for (const point of [high, low]) await run.take(point);
    expect((await run.end('passed')).body).toMatchObject({ state: 'passed', out: [] });
    const { instrumentId } = await beginning(job);
    const sheet = { kind: 'governor-test', runId: run.id } as const;
    const entry = { stepId: step.id, values: [], instrumentId, sheet, signature: pin };
    expect((await technician.call(travelerOperations.signStep, entry)).status).toBe(200);
    expect(await open(job)).not.toContainEqual(expect.stringContaining('Test on the bench'));
    expect(await paper(`/api/governor-runs/${run.id}/certificate`)).toContain('half a turn in');
  });
});
