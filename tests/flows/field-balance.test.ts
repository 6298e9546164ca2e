// size: one story from the plan to the log, with what each step refuses
import { createHash } from 'node:crypto';
import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { canonicalJson } from '@hubwright/rules/chain';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { balanceData, courserRotor, readingsWith, sheet } from '../../seed/data/field-balance.ts';
import type { Job } from '../support/job.ts';
import { analyser, installed, planning, weightsOnShelf } from '../support/on-aircraft.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

type Weights = (readonly [mass: number, angle: number])[];

/** From a released propeller to the aircraft's log: set-up, runs, weights from stock, signatures. */
describe('balance on the aircraft', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let technician: Visitor;
  let inspector: Visitor;
  let job: Job;
  let fieldBalanceId: string;
  let instrumentId: string;
  let bolt: string;
  let washer: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [desk, technician, inspector] = [
      await as(shop, 'front-desk'),
      await as(shop, 'technician'),
      await as(shop, 'inspector'),
    ];
    job = await installed(shop, 'F7001', async (open) => {
      const early = { operation: op.planFieldBalance, input: await planning(open) };
      await expectRefused({ shop, visitor: desk }, early, { status: 409, type: 'not-installed-yet' });
    });
    instrumentId = await analyser(shop);
    [bolt, washer] = [await weightsOnShelf(job, 'Q-DW-B2', 6), await weightsOnShelf(job, 'Q-DW-W1', 20)];
  }, 180_000);
  afterAll(() => shop.close());

  const detail = async () => (await technician.call(op.fieldBalance, { fieldBalanceId })).body;
  const version = async () => ({ version: (await detail()).version });
  const readings = (...weights: Weights) => readingsWith(courserRotor, weights);
  const run = async (kind: 'baseline' | 'trial' | 'check', weights: Weights, changes: object = {}) => ({
    operation: op.recordFieldRun,
    input: { fieldBalanceId, kind, readings: readings(...weights), ...changes },
    options: await version(),
  });
  const record = async (...asked: Parameters<typeof run>) => {
    const { operation, input, options } = await run(...asked);
    const answer = await technician.call(operation, input as never, options);
    expect([answer.status, answer.body.title]).toEqual([200, undefined]);
    return answer.body;
  };
  const refused = async (
    request: { operation: typeof op.recordFieldRun; input: object; options?: object },
    refusal: Parameters<typeof expectRefused>[2],
  ) => expectRefused({ shop, visitor: technician }, request as never, refusal);
  const setUp = async (changes: object = {}) => ({
    operation: op.signFieldSetUp,
    input: { fieldBalanceId, ...sheet, instrumentId, signature: pin, ...changes },
    options: await version(),
  });
  const inUnit = async () =>
    (await job.reads.balance.findMany({ where: { placeKind: 'unit', placeRef: fieldBalanceId } })).reduce(
      (sum, { onHand }) => sum + onHand,
      0,
    );
  const inBins = async (code: string) =>
    (await job.reads.balance.findMany({ where: { placeKind: 'bin', lot: { code } } })).reduce(
      (sum, { onHand }) => sum + onHand,
      0,
    );

  it('is planned once, by the desk, after the shop’s release', async () => {
    const input = await planning(job);
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.planFieldBalance, input },
      { status: 403, type: 'not-permitted' },
    );
    const planned = await desk.call(op.planFieldBalance, input);
    expect([planned.status, planned.body.number]).toEqual([200, 'FB-0001']);
    fieldBalanceId = planned.body.id;
    await expectRefused(
      { shop, visitor: desk },
      { operation: op.planFieldBalance, input },
      { status: 409, type: 'balanced-already' },
    );
    expect(
      (await desk.call(op.listFieldBalances, { search: 'zz-bmd', state: 'open', limit: 50 })).body.rows,
    ).toHaveLength(1);
  });

  it('is found by its number, scanned or typed in part', async () => {
    const find = async (text: string) => (await technician.call(unitOperations.find, { text })).body.rows;
    const hit = { kind: 'field-balance', id: fieldBalanceId, title: 'FB-0001', path: `/on-aircraft/${fieldBalanceId}` };
    expect(await find('fb-0001')).toEqual([{ ...hit, detail: 'balance of F7001 on ZZ-BMD', exact: true }]);
    expect(await find('B-00')).toContainEqual(expect.objectContaining({ ...hit, exact: false }));
    expect(await find('FB-0002')).toEqual([]);
  });

  it('begins with a sheet on which each point is confirmed, below the wind limit, with an instrument in calibration', async () => {
    await refused((await run('baseline', [])) as never, { status: 409, type: 'not-set-up' });
    for (const point of ['tiedDown', 'areaClear', 'cowlingClosed', 'brakesSet', 'observerPosted'])
      await refused((await setUp({ [point]: false })) as never, {
        status: 422,
        type: 'invalid-input',
        pointer: `/${point}`,
      });
    await refused((await setUp({ wind: '14' })) as never, { status: 409, type: 'wind-too-strong', pointer: '/wind' });
    const caliper = await job.reads.instrument.findUniqueOrThrow({ where: { tag: 'CAL-01' } });
    await refused((await setUp({ instrumentId: caliper.id })) as never, { status: 409, type: 'instrument-wrong' });
    const heavy = [{ place: 'H4', mass: '31', stays: true }];
    await refused((await setUp({ found: heavy })) as never, { status: 409, type: 'too-heavy', pointer: '/found' });
    const found = [{ place: 'H9', mass: '5.5', stays: false }];
    const { operation, input, options } = await setUp({ found });
    expect((await technician.call(operation, input, options)).status).toBe(200);
    expect(await detail()).toMatchObject({ state: 'set-up', standing: [], open: ['The baseline is not run'] });
  });

  it('takes readings as they are, but none that cannot be', async () => {
    const [low, high] = readings();
    const wrong = async (changed: object, type: string, pointer: string, status = 422) =>
      refused((await run('baseline', [], { readings: [{ ...low, ...changed }, high] })) as never, {
        status,
        type,
        pointer,
      });
    await wrong({ phase: '360' }, 'invalid-input', '/readings/0/phase');
    await wrong({ phase: '-5' }, 'invalid-input', '/readings/0/phase');
    await wrong({ rpm: 900 }, 'speed-outside', '/readings/0/rpm');
    await wrong({ amplitude: '11.4' }, 'reading-impossible', '/readings/0/amplitude');
    await refused((await run('check', [])) as never, { status: 409, type: 'run-out-of-turn' });
    await record('baseline', []);
    await refused((await run('check', [], { readings: [low] })) as never, { status: 422, type: 'speeds-differ' });
  });

  it('refuses a trial weight without an effect, too heavy, or nowhere', async () => {
    await refused((await run('trial', [])) as never, { status: 422, type: 'invalid-input', pointer: '/trial' });
    const none = { trial: { mass: '2', place: 'H1' } };
    await refused((await run('trial', [], none)) as never, {
      status: 422,
      type: 'no-influence',
      pointer: '/trial/mass',
    });
    const heavy = { trial: { mass: '31', place: 'H1' } };
    await refused((await run('trial', [[31, 0]], heavy)) as never, {
      status: 409,
      type: 'too-heavy',
      pointer: '/trial/mass',
    });
    const nowhere = { trial: { mass: '12', place: 'X9' } };
    await refused((await run('trial', [[12, 0]], nowhere)) as never, { status: 422, type: 'place-unknown' });
  });

  it('says from a trial at two speeds what to fit, in whole pieces of stock, and what to expect', async () => {
    const { runId } = await record('trial', [[12, 30]], { trial: { mass: '12', place: 'H1' } });
    // It sat in H2: put right with a reason; the wrong row stays.
    await refused(
      (await run('trial', [[12, 30]], { trial: { mass: '12', place: 'H2' }, supersedesId: runId })) as never,
      {
        ...{ status: 422, type: 'invalid-input', pointer: '/reason' },
      },
    );
    const right = { trial: { mass: '12', place: 'H2' }, supersedesId: runId, reason: 'It sat in H2' };
    await record('trial', [[12, 30]], right);
    await refused((await run('trial', [[12, 30]], right)) as never, { status: 409, type: 'run-superseded' });
    const { runs, answer } = await detail();
    expect(runs.map(({ supersededById }) => supersededById === null)).toEqual([true, false, true]);
    // The simulated rotor is 24 g @ 214°: opposite is 24 @ 34, within what two decimals and whole degrees allow.
    expect(answer?.changes[0]?.mass).toBeCloseTo(24, 0);
    expect(Math.abs((answer?.changes[0]?.angle ?? 0) - 34)).toBeLessThan(2);
    expect(answer?.beside.fillings.map(({ place }) => place)).toContain('H2');
    expect(answer?.beside.residuals[0]?.mass).toBeLessThan(0.8);
    // Not far more weight than is asked for, pulling against itself.
    expect(answer?.beside.fillings.reduce((sum, { mass }) => sum + mass, 0)).toBeLessThan(26);
    for (const { amplitude } of answer?.beside.predicted ?? []) expect(amplitude).toBeLessThan(0.07);
  });

  it('is not signed above the limit', async () => {
    const sign = {
      operation: op.signFieldBalance,
      input: { fieldBalanceId, remarks: '', signature: pin },
      options: await version(),
    };
    await refused(sign as never, { status: 409, type: 'not-measured-since' });
    await record('check', []);
    await refused({ ...sign, options: await version() } as never, { status: 409, type: 'above-limit' });
  });

  it('fits weights through the ledger, within every limit, and takes them off again by it', async () => {
    const fitting = async (weights: { place: string; lotCode: string; pieces: number }[]) => ({
      operation: op.fitFieldWeights,
      input: { fieldBalanceId, weights },
      options: await version(),
    });
    const refuse = async (weight: { place: string; lotCode: string; pieces: number }, type: string, status = 409) =>
      refused((await fitting([weight])) as never, { status, type });
    await refuse({ place: 'H2', lotCode: bolt, pieces: 4 }, 'too-heavy');
    await refuse({ place: 'H2', lotCode: washer, pieces: 7 }, 'too-heavy');
    await refuse({ place: 'Z1', lotCode: bolt, pieces: 1 }, 'place-unknown', 422);
    const seal = await job.onShelf((await job.reads.part.findUniqueOrThrow({ where: { number: 'Q301-34' } })).id, 5);
    await refuse({ place: 'H2', lotCode: seal, pieces: 1 }, 'no-hardware');
    const each = [1, 2, 3].map((n) => ({ place: `H${n}`, lotCode: bolt, pieces: 3 }));
    await refused((await fitting(each)) as never, { status: 409, type: 'not-enough' });
    // Wrong at first: the pieces of H8 are taken off again, one of them is lost to scrap.
    const weights = [
      { place: 'H2', lotCode: bolt, pieces: 2 },
      { place: 'H3', lotCode: washer, pieces: 2 },
      { place: 'H8', lotCode: washer, pieces: 2 },
    ];
    const { operation, input, options } = await fitting(weights);
    expect((await technician.call(operation, input, options)).status).toBe(200);
    expect([await inUnit(), await inBins(bolt), await inBins(washer)]).toEqual([6, 4, 16]);
    const off = async (changes: object) => ({
      operation: op.takeOffFieldWeights,
      input: { fieldBalanceId, place: 'H8', lotCode: washer, pieces: 1, reason: 'Wrong hole', ...changes },
      options: await version(),
    });
    await refused((await off({ pieces: 3 })) as never, { status: 409, type: 'not-there', pointer: '/pieces' });
    for (const changes of [{ bin: 'B-03' }, {}]) {
      const request = await off(changes);
      expect((await technician.call(request.operation, request.input, request.options)).status).toBe(200);
    }
    expect([await inUnit(), await inBins(bolt), await inBins(washer)]).toEqual([4, 4, 17]);
    const abandon = { fieldBalanceId, reason: 'Rain' };
    await expectRefused(
      { shop, visitor: desk },
      { operation: op.abandonFieldBalance, input: abandon, options: await version() },
      { status: 409, type: 'weights-standing' },
    );
    const movement = await job.reads.movement.findFirstOrThrow({ where: { toKind: 'unit', toRef: fieldBalanceId } });
    expect(movement.position).toBe('H2');
  });

  it('flags a reading no linear rotor gives', async () => {
    const odd = await record('check', []);
    expect(odd.surprising).toBe(true);
    // It was the reading of before, written down again.
    const right = await record(
      'check',
      [
        [16.8, 30],
        [4.2, 60],
      ],
      { supersedesId: odd.runId, reason: 'Old figures written down' },
    );
    expect(right.surprising).toBe(false);
    expect((await detail()).open).toEqual([]);
  });

  it('is signed by its readings and released by another person, with the entry for the log and a paper', async () => {
    const sign = { fieldBalanceId, remarks: 'Weights torqued and marked', signature: pin };
    expect((await technician.call(op.signFieldBalance, sign, await version())).status).toBe(200);
    const release = { fieldBalanceId, signature: pin };
    await refused(
      { operation: op.releaseFieldBalance as never, input: release, options: await version() },
      { status: 403, type: 'not-permitted' },
    );
    const released = await inspector.call(op.releaseFieldBalance, release, await version());
    expect(released.status).toBe(200);
    expect(released.body.logEntry).toMatch(
      /^Propeller Q3C-76, serial F7001, balanced dynamically on ZZ-BMD by QOM-301 revision 7.*Before: 0\.46 ips at .* After: 0\.0\d ips.*H2 2 × Q-DW-B2 \(16\.8 g\); H3 2 × Q-DW-W1 \(4\.2 g\).*Taken off: H9 5\.5 g\. Instrument VIB-01/,
    );
    const pdf = await inspector.send('GET', `/api/field-balances/${fieldBalanceId}/record.pdf`);
    expect([pdf.status, pdf.headers['content-type'], String(pdf.body.text).slice(0, 5)]).toEqual([
      200,
      'application/pdf',
      '%PDF-',
    ]);
    await refused((await run('check', [])) as never, { status: 409, type: 'not-set-up' });
    // What was signed still has its hash, and the chained entry names it.
    const signatures = await job.reads.fieldSignature.findMany({
      where: { fieldBalanceId },
      orderBy: { signedAt: 'asc' },
    });
    expect(signatures.map(({ kind }) => kind)).toEqual(['set-up', 'balanced', 'released']);
    for (const { content, contentHash, entryId } of signatures) {
      expect(createHash('sha256').update(canonicalJson(content)).digest('hex')).toBe(contentHash);
      const { body } = await job.reads.recordEntry.findUniqueOrThrow({ where: { id: entryId } });
      expect(body).toContain(contentHash);
    }
  });

  it('was never a door before the shop’s own release, and is over for the next one', async () => {
    const { body } = await inspector.call(releaseOperations.releaseChecklist, { workOrderId: job.id });
    expect(JSON.stringify(body)).not.toMatch(/FB-0001|dynamic/i);
    expect((await desk.call(op.planFieldBalance, await planning(job))).status).toBe(200);
  });

  it('finishes without weights where the baseline is within the limit, and a new sheet begins anew', async () => {
    fieldBalanceId = (await desk.call(op.listFieldBalances, { state: 'planned', limit: 50 })).body.rows[0]?.id ?? '';
    const smooth: Weights = [[21, 34]];
    for (let again = 0; again < 2; again += 1) {
      const { operation, input, options } = await setUp();
      expect((await technician.call(operation, input, options)).status).toBe(200);
      await record('baseline', smooth);
    }
    expect((await detail()).runs).toHaveLength(2);
    const sign = { fieldBalanceId, remarks: '', signature: pin };
    expect((await technician.call(op.signFieldBalance, sign, await version())).status).toBe(200);
    expect(await detail()).toMatchObject({ state: 'balanced', standing: [], balanced: { remarks: '' } });
  });

  it('has its places and limits from an inspector, by document, and refuses muddled ones', async () => {
    const modelId = (await job.workOrder()).modelId;
    const data = balanceData['Q3C-76'] as NonNullable<(typeof balanceData)[string]>;
    const entering = (changes: object) => ({
      operation: op.enterFieldBalanceData,
      input: { modelId, ...data, signature: pin, ...changes },
    });
    const refuse = (changes: object, pointer: string) =>
      expectRefused({ shop, visitor: inspector }, entering(changes), { status: 422, type: 'places-wrong', pointer });
    await refuse({ places: [...data.places, { name: 'H1', angle: '7' }] }, '/places/12/name');
    await refuse({ places: [...data.places, { name: 'H13', angle: '30.0' }] }, '/places/12/name');
    const [range] = data.ranges;
    await refuse({ ranges: [range, { ...range, fromRpm: 2_600, toRpm: 2_800 }] }, '/ranges/1/fromRpm');
    await refuse({ ranges: [{ ...range, target: '0.3' }] }, '/ranges/0/target');
    await expectRefused({ shop, visitor: technician }, entering({}), { status: 403, type: 'not-permitted' });
    expect((await inspector.call(op.enterFieldBalanceData, { modelId, ...data, signature: pin })).status).toBe(200);
    expect((await inspector.call(op.listFieldBalanceData, {})).body.rows).toHaveLength(3);
    expect((await inspector.call(op.listBalanceHardware, {})).body.rows).toHaveLength(4);
  });
});
