import { findingOperations } from '@hubwright/contracts/findings/operations';
import { governorOperations as op } from '@hubwright/contracts/governor-tests/operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { governorPrograms } from '../../seed/data/governor-programs.ts';
import { atTheBench, BenchRun, beginning, closeBuildAgain, governor, warm } from '../support/governor-visit.ts';
import type { Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('governors on the bench', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let inspector: Visitor;
  let single: Job;
  let twin: Job;
  let nobodys: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'tobit');
    inspector = await as(shop, 'sunniva');
    single = await atTheBench(shop, 'VG9001', await governor(shop, 'Heronby Courser 4'));
    twin = await atTheBench(shop, 'VG9002', await governor(shop, 'Orrick Twinlark', 'left'));
    nobodys = await atTheBench(shop, 'VG9003', await governor(shop, null));
  }, 120_000);
  afterAll(() => shop.close());

  const refused = (request: Parameters<typeof expectRefused>[1], status: number, type: string, pointer?: string) =>
    expectRefused({ shop, visitor: technician }, request, { status, type, ...(pointer ? { pointer } : {}) });
  const openItems = async ({ id }: Job) =>
    (await inspector.call(releaseOperations.releaseChecklist, { workOrderId: id })).body.open.map(({ what }) => what);
  const signing = async (job: Job, runId: string) => {
    const step = await job.nextAt('assembly');
    const { instrumentId } = await beginning(job);
    return {
      stepId: step.id,
      values: [],
      instrumentId,
      sheet: { kind: 'governor-test' as const, runId },
      signature: pin,
    };
  };

  it('go by the program of their application and of no other: stops differ from installation to installation', async () => {
    const { rows } = (await inspector.call(op.listGovernorPrograms, { limit: 50 })).body;
    const stops = (airframe: string) =>
      rows
        .find(({ application }) => application.airframe === airframe)
        ?.content.points.find(({ kind }) => kind === 'high-stop');
    expect(stops('Heronby Courser 4')).toMatchObject({ low: '2408', high: '2425' });
    expect(stops('Orrick Twinlark')).toMatchObject({ low: '2296', high: '2313' });
    const [mine, other] = [await beginning(single), await beginning(twin)];
    await refused(
      { operation: op.beginGovernorRun, input: { ...mine, programId: other.programId } },
      409,
      'wrong-application',
    );
    await refused({ operation: op.beginGovernorRun, input: await beginning(nobodys) }, 409, 'application-unknown');
    const { guardClosed: _guard, ...unguarded } = mine;
    await refused({ operation: op.beginGovernorRun, input: unguarded }, 422, 'invalid-input', '/guardClosed');
    const waiting = (await technician.call(op.waitingForGovernorBench, {})).body.rows;
    expect(waiting.find(({ workOrderId }) => workOrderId === nobodys.id)).toMatchObject({
      application: null,
      programId: null,
    });
  });

  it('are not tested by a figure nobody could have read: impossible, in another unit, of cold oil, of no point', async () => {
    const run = await BenchRun.begin(single, technician);
    await refused({ operation: op.beginGovernorRun, input: await beginning(single) }, 409, 'run-open');
    const relief = run.point('relief-pressure');
    await refused(run.taking(relief, { value: '29000' }), 422, 'reading-impossible', '/value');
    await refused(run.taking(relief, { value: '-4' }), 422, 'reading-impossible', '/value');
    await refused(run.taking(relief, { value: '1965' }), 422, 'unit-doubtful', '/unit');
    await refused(run.taking(relief, { unit: 'qt/h' }), 422, 'unit-wrong', '/unit');
    await refused(run.taking(relief, { oilTemperature: '70' }), 409, 'oil-temperature', '/oilTemperature');
    await refused(run.taking(relief, { oilUnit: 'psi' }), 422, 'unit-wrong', '/oilUnit');
    await refused(run.taking(relief, { point: 'smell' }), 422, 'point-unknown', '/point');
    // The same number with the unit the gauge shows, or after a second look, is a reading.
    expect(await run.take(relief, { value: '1965', unit: 'kPa', oilTemperature: '75', oilUnit: 'degC' })).toMatchObject(
      { pass: true },
    );
    expect((await run.take(relief, { value: '1965', unitChecked: true })).pass).toBe(false);
    const { readings } = await run.seen();
    expect(readings.map(({ value, asRead, stands }) => [value, asRead.unit, stands])).toEqual([
      ['284.999155', 'kPa', false], // 1965 / 6.894757293168361, NIST SP 811
      ['1965', 'psi', true],
    ]);
    expect(Number(readings[0]?.oilTemperature)).toBe(167); // 75 × 1.8 + 32
    expect((await run.end('broken-off', 'Gauge line to be bled')).body.state).toBe('broken-off');
    await refused(run.taking(relief), 409, 'run-ended');
  });

  it('pass through two stops and one failed point only when every point is good after the last adjustment', async () => {
    const run = await BenchRun.begin(single, technician);
    const [high, low] = [run.point('high-stop'), run.point('low-stop')];
    await run.take(low);
    expect(await run.take(high, { value: '2440' })).toMatchObject({ pass: false, out: [high.name] });
    await run.takeAll();
    const late = await run.take(low, { value: '1300' });
    expect(late).toMatchObject({ pass: false, open: [], out: [low.name] });
    await refused(await run.ending('passed'), 409, 'run-not-whole');
    const screw = { runId: run.id, what: 'high speed stop screw', before: 'as received', after: 'half a turn in' };
    const adjusted = await technician.call(op.recordGovernorAdjustment, screw);
    expect(adjusted.body.reopened).toEqual([high.name, low.name]);
    await run.take(low);
    await refused(await run.ending('passed'), 409, 'run-not-whole');
    await run.take(high);
    const seen = await run.seen();
    expect([seen.passes, seen.pointsGood, seen.points]).toEqual([true, 5, 5]);
    expect(seen.readings.filter(({ point }) => point === high.name).map(({ pass, stands }) => [pass, stands])).toEqual([
      [false, false],
      [true, false],
      [true, true],
    ]);
    await refused(await run.ending('failed', 'It does not'), 409, 'run-passes');

    // An open run signs nothing, and the release waits for the step.
    await refused({ operation: travelerOperations.signStep, input: await signing(single, run.id) }, 422, 'sheet-wrong');
    expect((await run.end('passed')).body).toMatchObject({ state: 'passed', out: [] });
    expect(await openItems(single)).toContainEqual(expect.stringContaining('Test on the bench'));
    const { text: before } = await readPdf(await pdf(run.id));
    expect(before).toContain('NO CERTIFICATE');

    const other = await BenchRun.begin(twin, technician);
    await refused({ operation: travelerOperations.signStep, input: await signing(twin, run.id) }, 422, 'sheet-wrong');
    await other.end('broken-off', 'Not yet');
    const { sheet: _sheet, ...bare } = await signing(single, run.id);
    await refused({ operation: travelerOperations.signStep, input: bare }, 422, 'sheet-missing');
    const signed = await technician.call(travelerOperations.signStep, await signing(single, run.id));
    expect(signed.status).toBe(200);
    expect(await openItems(single)).not.toContainEqual(expect.stringContaining('Test on the bench'));
  });

  const pdf = async (runId: string) => {
    const response = await fetch(`${shop.address}/api/governor-runs/${runId}/certificate`, {
      headers: { cookie: technician.cookie },
    });
    return Buffer.from(await response.arrayBuffer());
  };

  it('get a certificate that says what was read, what was adjusted and who signed', async () => {
    const [run] = (await inspector.call(op.listGovernorRuns, { limit: 50 })).body.rows.filter(
      ({ state }) => state === 'passed',
    );
    const { text } = await readPdf(await pdf(run?.id ?? ''));
    for (const words of [
      'Governor test certificate',
      'VG9001',
      'Heronby Courser 4',
      'high speed stop',
      '2408',
      'half a turn in',
      'Tobit Arkle',
      'GOV-01',
    ])
      expect(text).toContain(words);
    expect(text).toContain('not for use on aircraft');
    const open = (await inspector.call(op.listGovernorRuns, { limit: 50 })).body.rows.find(
      ({ state }) => state === 'broken-off',
    );
    await refused({ operation: op.governorCertificatePdf, input: { runId: open?.id ?? '' } }, 409, 'run-not-passed');
  });

  it('that do not pass are signed as failed with a finding, tested again after its repair, and keep their history', async () => {
    const { id: runId } = await BenchRun.begin(twin, technician);
    const leakage = { runId, point: 'internal leakage', value: '8.5', unit: 'qt/h' as const, ...warm };
    expect((await technician.call(op.takeGovernorReading, leakage)).body.pass).toBe(false);
    const { version } = (await technician.call(op.governorRun, { runId: leakage.runId })).body;
    const ended = { runId: leakage.runId, result: 'failed' as const, reason: 'Leaks past the pilot valve' };
    expect((await technician.call(op.endGovernorRun, ended, { version })).body.out).toEqual(['internal leakage']);
    const entry = await signing(twin, leakage.runId);
    await refused({ operation: travelerOperations.signStep, input: entry }, 409, 'outside-limits');
    const found = { area: 'general', damage: 'worn' as const, place: 'pilot valve', description: 'Leaks 8.5 qt/h' };
    const failed = await technician.call(findingOperations.failStep, { ...entry, ...found });
    expect([failed.status, failed.body.number]).toEqual([200, expect.stringMatching(/^FND-|^F/)]);
    expect(await openItems(twin)).toContainEqual(expect.stringContaining('has no disposition'));
    const lap = { title: 'Lap pilot valve', process: 'assembly' as const, standardMinutes: 20 };
    const decision = { findingId: failed.body.id, disposition: 'repair' as const, steps: [lap], signature: pin };
    const decided = await inspector.call(findingOperations.disposeFinding, decision, { version: 1 });
    expect(decided.body).toMatchObject({ disposition: 'repair' });
    await twin.sign(await twin.nextAt('assembly'));
    // The failure opened the build; it is closed before the governor is on the bench again.
    await refused({ operation: op.beginGovernorRun, input: await beginning(twin) }, 409, 'build-open');
    await closeBuildAgain(twin);
    const again = await BenchRun.begin(twin, technician);
    const { history } = await again.seen();
    expect(history.map(({ state }) => state)).toEqual(['failed']);
    expect(history[0]?.values).toContainEqual({ point: 'internal leakage', value: '8.5', unit: 'qt/h', pass: false });
    await again.takeAll();
    await again.end('passed');
    const passed = await technician.call(travelerOperations.signStep, await signing(twin, again.id));
    expect(passed.status).toBe(200);
    const { steps } = (await technician.call(travelerOperations.traveler, { travelerId: passed.body.travelerId })).body;
    const [said] = steps.find(({ id }) => id === passed.body.id)?.signOffs ?? [];
    expect(said?.sheet?.said).toContainEqual({ name: 'internal leakage', value: '6.0 qt/h (at most 6.0 qt/h)' });
  });

  it('are held by a program that was issued anew, and by a revision that was', async () => {
    const job = await atTheBench(shop, 'VG9004', await governor(shop, 'Heronby Pinnace'));
    const run = await BenchRun.begin(job, technician);
    await run.takeAll();
    const { applicationId, revisionId } = await job.workOrder();
    const program = governorPrograms['Heronby Pinnace'];
    const issue = {
      operation: op.issueGovernorProgram,
      input: { ...program, revisionId, applicationId: applicationId ?? '', signature: pin },
    };
    await refused(issue, 403, 'not-permitted');
    const twice = { ...program, points: [...(program?.points ?? []), program?.points[0]] };
    const doubled = { ...issue, input: { ...issue.input, ...twice } as never };
    await expectRefused({ shop, visitor: inspector }, doubled, {
      status: 422,
      type: 'program-wrong',
      pointer: '/points/5/name',
    });
    expect((await inspector.call(issue.operation, issue.input as never)).body.issue).toBe(2);
    await refused(await run.ending('passed'), 409, 'program-superseded');
    await refused(run.taking(run.point('low-stop')), 409, 'program-superseded');
    expect((await run.end('broken-off', 'The program was issued anew')).status).toBe(200);
  }, 60_000);

  it('are told what they are for once somebody knows it; what was tested for one aircraft is not for another', async () => {
    const telling = async (job: Job, applicationId: string | null) => ({
      operation: workOrderOperations.setApplication,
      input: { workOrderId: job.id, applicationId, reason: 'the owner telephoned' },
      options: { version: (await job.workOrder()).version },
    });
    const { modelId, applicationId } = await single.workOrder();
    const strange = await single.reads.application.findFirstOrThrow({ where: { modelId: { not: modelId } } });
    await expectRefused({ shop, visitor: inspector }, await telling(nobodys, strange.id), {
      ...{ status: 422, type: 'application-wrong', pointer: '/applicationId' },
    });
    const { input, options } = await telling(nobodys, applicationId);
    const told = await inspector.call(
      workOrderOperations.setApplication,
      { ...input, applicationId: applicationId ?? '' },
      options,
    );
    expect([told.status, told.body]).toEqual([200, told.body]);
    const waiting = (await technician.call(op.waitingForGovernorBench, {})).body.rows;
    expect(waiting.find(({ workOrderId }) => workOrderId === nobodys.id)?.programId).not.toBeNull();
    const { applicationId: other } = await twin.workOrder();
    await expectRefused({ shop, visitor: inspector }, await telling(single, other), {
      status: 409,
      type: 'application-used',
    });
  });
});
