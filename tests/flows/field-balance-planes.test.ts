import { fieldBalanceOperations as op } from '@hubwright/contracts/field-balance/operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import {
  balanceData,
  courserInPlanes,
  courserRotor,
  readingsInPlanes,
  readingsWith,
  secondSensor,
  sheet,
  starterRing,
} from '../../seed/data/field-balance.ts';
import type { Job } from '../support/job.ts';
import { analyser, installed, planning, weightsOnShelf } from '../support/on-aircraft.ts';
import { as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

type Weights = Parameters<typeof readingsInPlanes>[1];

/** Two planes of places and two sensors: spinner bulkhead and starter ring. */
describe('balance on the aircraft in two planes', () => {
  let shop: ShopApp;
  let desk: Visitor;
  let technician: Visitor;
  let inspector: Visitor;
  let job: Job;
  let fieldBalanceId: string;
  let instrumentId: string;
  const lots = new Map<string, string>();
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [desk, technician, inspector] = [
      await as(shop, 'front-desk'),
      await as(shop, 'technician'),
      await as(shop, 'inspector'),
    ];
    job = await installed(shop, 'F7201');
    instrumentId = await analyser(shop);
    for (const number of ['Q-DW-B1', 'Q-DW-B2', 'Q-DW-W1', 'Q-DW-W2'])
      lots.set(number, await weightsOnShelf(job, number, 20));
  }, 180_000);
  afterAll(() => shop.close());
  const detail = async () => (await technician.call(op.fieldBalance, { fieldBalanceId })).body;
  const version = async () => ({ version: (await detail()).version });
  const run = async (kind: 'baseline' | 'trial' | 'check', weights: Weights, changes: object = {}) => ({
    operation: op.recordFieldRun,
    input: { fieldBalanceId, kind, readings: readingsInPlanes(courserInPlanes, weights), ...changes },
    options: await version(),
  });
  const record = async (...asked: Parameters<typeof run>) => {
    const { operation, input, options } = await run(...asked);
    const answer = await technician.call(operation, input as never, options);
    expect([answer.status, answer.body.detail]).toEqual([200, undefined]);
    return answer.body;
  };
  const setUp = async (changes: object = {}) => ({
    operation: op.signFieldSetUp,
    input: { fieldBalanceId, ...sheet, instrumentId, signature: pin, ...changes },
    options: await version(),
  });
  const fitting = async (weights: { place: string; lotCode: string; pieces: number }[]) => ({
    operation: op.fitFieldWeights,
    input: { fieldBalanceId, weights },
    options: await version(),
  });
  const refused = (request: object, refusal: Parameters<typeof expectRefused>[2], visitor = technician) =>
    expectRefused({ shop, visitor }, request as never, refusal);
  const lot = (part: string) => lots.get(part) ?? '';

  it('has both planes from an inspector, each with a name, and no place of one named as one of the other', async () => {
    const modelId = (await job.workOrder()).modelId;
    const data = { ...balanceData['Q3C-76'], ...starterRing } as NonNullable<(typeof balanceData)[string]>;
    const { secondPlane } = starterRing;
    const entering = (changes: object) => ({
      operation: op.enterFieldBalanceData,
      input: { modelId, ...data, signature: pin, ...changes },
    });
    const refuse = (changes: object, pointer: string) =>
      refused(entering(changes), { status: 422, type: 'places-wrong', pointer }, inspector);
    await refuse(
      { secondPlane: { ...secondPlane, places: [{ name: 'H3', angle: '1' }] } },
      '/secondPlane/places/0/name',
    );
    await refuse({ planeName: undefined }, '/planeName');
    await refuse({ planeName: 'Starter ring' }, '/secondPlane/planeName');
    const { operation, input } = entering({});
    expect((await inspector.call(operation, input as never)).status).toBe(200);
    // S1 sits at the same angle as H1: in another plane that is another place.
    const { rows } = (await inspector.call(op.listFieldBalanceData, {})).body;
    expect(rows.find(({ model }) => model.id === modelId)?.secondPlane?.places).toHaveLength(10);
  });

  it('balances the first plane alone while the sheet has one sensor', async () => {
    fieldBalanceId = (await desk.call(op.planFieldBalance, await planning(job))).body.id;
    const { operation, input, options } = await setUp();
    expect((await technician.call(operation, input, options)).status).toBe(200);
    const alone = (weights: Parameters<typeof readingsWith>[1]) => ({ readings: readingsWith(courserRotor, weights) });
    await refused(await run('baseline', []), { status: 422, type: 'sensors-differ', pointer: '/readings/0/second' });
    await record('baseline', [], alone([]));
    const inRing = { ...alone([[12, 36]]), trial: { mass: '12', place: 'S2' } };
    await refused(await run('trial', [], inRing), { status: 409, type: 'plane-unused', pointer: '/trial/place' });
    const atAngle = { ...alone([[12, 40]]), trial: { mass: '12', angle: '40', plane: 'Starter ring' } };
    await refused(await run('trial', [], atAngle), { status: 409, type: 'plane-unused' });
    const piece = { place: 'S2', lotCode: lot('Q-DW-B1'), pieces: 1 };
    await refused(await fitting([piece]), { status: 409, type: 'plane-unused', pointer: '/weights/0/place' });
    await record('trial', [], { ...alone([[12, 30]]), trial: { mass: '12', place: 'H2' } });
    const { answer } = await detail();
    expect(answer?.changes).toMatchObject([{ plane: 'Spinner bulkhead' }]);
    expect(answer?.changes[0]?.mass).toBeCloseTo(24, 0);
  });

  it('reads both sensors of a sheet that has two, and neither as none can be', async () => {
    const { operation, input, options } = await setUp({ secondSensor });
    expect((await technician.call(operation, input, options)).status).toBe(200);
    const readings = readingsInPlanes(courserInPlanes, []);
    const [low, high] = readings;
    const { second: _, ...half } = low!;
    const wrong = async (first: object, type: string, pointer: string) =>
      refused(await run('baseline', [], { readings: [first, high] }), { status: 422, type, pointer });
    await wrong(half, 'sensors-differ', '/readings/0/second');
    await wrong(
      { ...low, second: { amplitude: '9', phase: '7' } },
      'reading-impossible',
      '/readings/0/second/amplitude',
    );
    await wrong({ ...low, second: { amplitude: '0.3', phase: '360' } }, 'invalid-input', '/readings/0/second/phase');
    await record('baseline', []);
  });

  it('says nothing until each plane had a trial of its own that told', async () => {
    await record('trial', [[0, 12, 30]], { trial: { mass: '12', place: 'H2' } });
    expect(await detail()).toMatchObject({
      answer: null,
      unanswered: expect.stringMatching(/planes apart yet: run a trial weight in each plane/),
    });
    const idle = { trial: { mass: '2', place: 'S1' } };
    await refused(await run('trial', [], idle), { status: 422, type: 'no-influence', pointer: '/trial/mass' });
    const heavy = { trial: { mass: '26', place: 'S1' } };
    await refused(await run('trial', [[1, 26, 0]], heavy), { status: 409, type: 'too-heavy', pointer: '/trial/mass' });
    const nowhere = { trial: { mass: '12', angle: '40', plane: 'Fan' } };
    await refused(await run('trial', [], nowhere), { status: 422, type: 'place-unknown', pointer: '/trial/plane' });
    await record('trial', [[1, 14, 0]], { trial: { mass: '14', place: 'S1' } });
  });

  it('then says what to fit in each plane, and what each sensor should read', async () => {
    const { answer, unanswered } = await detail();
    expect(unanswered).toBeNull();
    const [first, second] = answer?.changes ?? [];
    // Simulated: 22 g @ 200° and 15 g @ 310° are out of balance; opposite, within two decimals and whole degrees.
    expect([first?.plane, second?.plane]).toEqual(['Spinner bulkhead', 'Starter ring']);
    expect(Math.abs((first?.mass ?? 0) - 22)).toBeLessThan(1);
    expect(Math.abs((first?.angle ?? 0) - 20)).toBeLessThan(3);
    expect(Math.abs((second?.mass ?? 0) - 15)).toBeLessThan(1);
    expect(Math.abs((second?.angle ?? 0) - 130)).toBeLessThan(3);
    expect(answer?.speeds.map(({ rpm, sensor }) => [rpm, sensor])).toEqual([
      ...[
        [2_300, 0],
        [2_500, 0],
      ],
      ...[
        [2_300, 1],
        [2_500, 1],
      ],
    ]);
    expect(answer?.weakPlanes).toEqual([]);
    const places = answer?.beside.fillings.map(({ place }) => place[0]);
    expect([places?.includes('H'), places?.includes('S')]).toEqual([true, true]);
    expect(answer?.beside.residuals).toHaveLength(2);
    for (const { amplitude } of answer?.beside.predicted ?? []) expect(amplitude).toBeLessThan(0.07);
  });

  it('fits weights by the limits of each plane', async () => {
    const ring = (part: string, place: string, pieces: number) => ({ place, lotCode: lot(part), pieces });
    await refused(await fitting([ring('Q-DW-W1', 'S1', 5)]), { status: 409, type: 'too-heavy' });
    const each = ['S1', 'S3', 'S5'].map((place) => ring('Q-DW-B1', place, 4));
    await refused(await fitting(each), { status: 409, type: 'too-heavy', pointer: '/weights' });
    // 16.8 g in H2 (30°), 4.2 + 1.8 g in H1 (0°); 12.4 g in S5 (144°), 4.2 g in S3 (72°).
    const fitted = [
      { place: 'H2', lotCode: lot('Q-DW-B2'), pieces: 2 },
      { place: 'H1', lotCode: lot('Q-DW-W1'), pieces: 2 },
      { place: 'H1', lotCode: lot('Q-DW-W2'), pieces: 2 },
      { place: 'S5', lotCode: lot('Q-DW-B1'), pieces: 2 },
      { place: 'S3', lotCode: lot('Q-DW-W1'), pieces: 2 },
    ];
    const { operation, input, options } = await fitting(fitted);
    expect((await technician.call(operation, input, options)).status).toBe(200);
    const oneSensor = await setUp();
    await refused(oneSensor, { status: 409, type: 'weights-standing' });
    expect((await detail()).standing.map(({ place, plane }) => [place, plane])).toEqual([
      ['H1', 'Spinner bulkhead'],
      ['H1', 'Spinner bulkhead'],
      ['H2', 'Spinner bulkhead'],
      ['S3', 'Starter ring'],
      ['S5', 'Starter ring'],
    ]);
  });

  const asFitted: Weights = [
    [0, 16.8, 30],
    [0, 6, 0],
    [1, 12.4, 144],
    [1, 4.2, 72],
  ];

  it('judges each sensor by itself', async () => {
    const readings = readingsInPlanes(courserInPlanes, asFitted);
    const shaking = readings.map((one) => ({ ...one, second: { amplitude: '0.31', phase: '80' } }));
    const { runId, surprising } = await record('check', [], { readings: shaking });
    expect(surprising).toBe(true);
    const sign = { fieldBalanceId, remarks: '', signature: pin };
    const signing = { operation: op.signFieldBalance, input: sign, options: await version() };
    await refused(signing, { status: 409, type: 'above-limit' });
    expect((await detail()).open[0]).toBe('Engine case, rear, right: 0.31 ips at 2300 rpm; the limit is 0.20');
    const right = await record('check', asFitted, { supersedesId: runId, reason: 'Cable of the second sensor loose' });
    expect(right.surprising).toBe(false);
    expect((await detail()).open).toEqual([]);
  });

  it('is signed and released with both planes and both sensors in the log and on paper', async () => {
    const sign = { fieldBalanceId, remarks: '', signature: pin };
    expect((await technician.call(op.signFieldBalance, sign, await version())).status).toBe(200);
    const released = await inspector.call(op.releaseFieldBalance, { fieldBalanceId, signature: pin }, await version());
    expect([released.status, released.body.detail]).toEqual([200, undefined]);
    const { logEntry } = released.body;
    expect(logEntry).toMatch(
      /Before: 0\.\d\d ips at \d+° and 2300 rpm \(Engine case, behind the propeller flange, top\)/,
    );
    expect(logEntry).toMatch(/After: .* and 2500 rpm \(Engine case, rear, right\)\./);
    expect(logEntry).toMatch(/Spinner bulkhead H2 2 × Q-DW-B2 \(16\.8 g\); Starter ring S3 2 × Q-DW-W1 \(4\.2 g\)/);
    const { number, balanced, released: approved } = await detail();
    const answer = await fetch(`${shop.address}/api/field-balances/${fieldBalanceId}/record.pdf`, {
      headers: { cookie: inspector.cookie },
    });
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    const { text, title, marked } = await readPdf(Buffer.from(await answer.arrayBuffer()));
    expect([title, marked]).toEqual([expect.stringContaining(`Balance on the aircraft ${number}`), true]);
    // Both sensors at both speeds, before and after, as they were read: the simulated rotor without and with what was fitted.
    const [before, after] = [readingsInPlanes(courserInPlanes, []), readingsInPlanes(courserInPlanes, asFitted)];
    for (const [at, one] of before.entries())
      for (const [sensor, then, now] of [
        [sheet.sensorPlace, one, after[at]],
        [secondSensor.sensorPlace, one.second, after[at]?.second],
      ] as const) {
        const row = [`${one.rpm} rpm`, then.amplitude, `${then.phase}°`, now?.amplitude, `${now?.phase}°`].join(' ');
        expect(text.replaceAll(/\s+/g, ' ')).toContain(row);
        expect(text).toContain(sensor);
      }
    expect(text).toContain('H2, Spinner bulkhead');
    expect(text).toContain('S3, Starter ring');
    expect(text).toMatch(/2 × Q-DW-B2 of \S+ 16\.8 g/);
    const flat = text.replaceAll(' ', '');
    expect(flat).toContain(logEntry.replaceAll(' ', ''));
    for (const signed of [balanced, approved]) {
      expect(text).toContain(signed?.by.displayName);
      expect(flat).toContain(signed?.contentHash);
    }
  });
});
