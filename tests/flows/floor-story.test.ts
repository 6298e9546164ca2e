// size: one story told in order; each step stands on the one before

import { fileOperations } from '@hubwright/contracts/files/operations';
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { setOperations } from '@hubwright/contracts/findings/set-operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { unitOperations } from '@hubwright/contracts/units/operations';
import { vendorOperations } from '@hubwright/contracts/vendors/operations';
import { dimensionOperations } from '@hubwright/contracts/work-orders/dimension-operations';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { reviewOperations } from '@hubwright/contracts/work-orders/review-operations';
import { travelerOperations as op } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { issueRevision } from '../../apps/server/src/modules/manuals/issue-revision.command.ts';
import { fourBlade } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { goodValues, Job } from '../support/job.ts';
import { ledgerFaults } from '../support/ledger-faults.ts';
import { fourBladeContent } from '../support/manual-content.ts';
import { as, pin } from '../support/people.ts';
import { jpeg, sendFile } from '../support/pictures.ts';
import { readBarcodes } from '../support/read-barcodes.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/** Three four-blade propellers on the floor on one day; the first of them is the story. */
describe('a day on the floor', () => {
  let shop: ShopApp;
  let technician: Visitor;
  let inspector: Visitor;
  let clerk: Visitor;
  let jobs: Job[];
  let job: Job;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [technician, inspector] = [await as(shop, 'technician'), await as(shop, 'inspector')];
    clerk = await as(shop, 'parts-room');
    jobs = [];
    for (const serial of ['S4001', 'S4002', 'S4003']) {
      const one = await Job.arrived(shop, serial, await fourBlade(shop, serial));
      await one.tornDown();
      jobs.push(one);
    }
    job = jobs[0] as Job;
  }, 180_000);
  afterAll(() => shop.close());

  const blades = ['blade 1', 'blade 2', 'blade 3', 'blade 4'];
  const upTo = async (position: string, title: string) => {
    for (;;) {
      const step = await job.nextAt(position);
      if (step.title === title) return step;
      await job.sign(step);
    }
  };
  const read = (step: Awaited<ReturnType<typeof upTo>>, named: Record<string, string>) =>
    goodValues(step).map((one) => {
      const name = step.measures.find(({ id }) => id === one.measureId)?.name ?? '';
      return { ...one, value: named[name] ?? one.value };
    });
  const fail = async (position: string, named: Record<string, string>) => {
    const step = await job.nextAt(position);
    const entry = await job.entryFor(step, read(step, named));
    const spot = { on: 'blade' as const, surface: 'face' as const, station: '30.0', chord: 'leading' as const };
    const found = {
      area: 'leading-edge',
      damage: 'out-of-limits' as const,
      place: 'station 30',
      description: 'too narrow',
      spot,
    };
    const { status, body } = await technician.call(findingOperations.failStep, { ...entry, ...found });
    expect([status, body]).toEqual([200, body]);
    return body;
  };
  const decide = async (findingId: string, disposition: 'repair' | 'reject', steps: object[] = []) => {
    const { version } = (await inspector.call(findingOperations.finding, { findingId })).body;
    const input = { findingId, disposition, steps: steps as never, signature: pin };
    const { status, body } = await inspector.call(findingOperations.disposeFinding, input, { version });
    expect([status, body]).toEqual([200, body]);
  };
  const blend = [
    { title: 'Blend the leading edge', process: 'blade-repair', standardMinutes: 40 },
    { title: 'Penetrant test where it was blended', process: 'non-destructive-test', standardMinutes: 20 },
  ];

  it('scans the barcode of a step, and lands on it', async () => {
    const { travelerId, id } = await job.nextAt('blade 1');
    const answer = await fetch(`${shop.address}/api/travelers/${travelerId}/pdf`, {
      headers: { cookie: technician.cookie },
    });
    const codes = await readBarcodes(Buffer.from(await answer.arrayBuffer()));
    const landings = await Promise.all(codes.map((code) => technician.call(unitOperations.find, { text: code })));
    const found = landings.flatMap(({ body }) => (body as { rows: { kind: string; id: string }[] }).rows);
    expect(found).toContainEqual(expect.objectContaining({ kind: 'traveler-step', id }));
  });

  it('strips twelve blades of three propellers in one tank, by one signature with one process form', async () => {
    const steps = await Promise.all(jobs.flatMap((one) => blades.map((position) => one.nextAt(position))));
    const input = {
      process: 'cleaning' as const,
      equipmentId: await job.fit('strip-tank'),
      stepIds: steps.map(({ id }) => id),
    };
    const begun = await technician.call(loadOperations.startLoad, input);
    expect(begun.status).toBe(200);
    const [load] = (await technician.call(loadOperations.listLoads, { state: 'open', limit: 10 })).body.rows;
    expect(load?.parts).toHaveLength(12);
    const form = (load?.form ?? []).map(({ name, unit }) => ({ name, value: unit ? '140' : '1' }));
    const sign = { operation: loadOperations.signLoad, input: { loadId: load?.id ?? '', form, signature: pin } };
    const version = load?.version ?? 0;
    const without = { ...sign, input: { ...sign.input, form: form.slice(1) }, options: { version } };
    await expectRefused({ shop, visitor: technician }, without, { status: 422, type: 'form-missing' });
    const signed = await technician.call(sign.operation, sign.input, { version });
    expect(signed.body.signOffIds).toHaveLength(12);
  });

  it('measures every blade at each station; one at its very limit is good', async () => {
    for (const position of ['blade 1', 'blade 4']) {
      const step = await upTo(position, 'Measure blade by station');
      expect(new Set(step.measures.flatMap(({ station }) => station ?? []))).toEqual(
        new Set(['18', '24', '30', '36', '39']),
      );
      await job.sign(step);
    }
    const { parts } = (await inspector.call(dimensionOperations.workOrderDimensions, { workOrderId: job.id })).body;
    const row = parts
      .find(({ position }) => position === 'blade 1')
      ?.rows.find(({ name }) => name === 'width at 39 in');
    expect(row).toMatchObject({ low: '4.305', asFound: { value: '4.305', pass: true } });
  });

  it('finds one too narrow, with a photo; its repair is measured again, fails once and ends', async () => {
    await upTo('blade 2', 'Measure blade by station');
    const found = await fail('blade 2', { 'width at 30 in': '6.505' });
    const fileId = (await sendFile(shop, technician, { bytes: await jpeg(), type: 'image/jpeg' })).body.id;
    const photo = {
      findingId: found.id,
      fileId: String(fileId),
      title: 'Leading edge at station 30',
      takenAt: new Date().toISOString(),
    };
    expect((await technician.call(fileOperations.addPhoto, photo)).status).toBe(200);
    await decide(found.id, 'repair', blend);
  });

  it('rejects another, and with it the mate across the hub', async () => {
    await upTo('blade 3', 'Measure blade by station');
    const { id: findingId } = await fail('blade 3', { 'width at 30 in': '6.390' });
    await decide(findingId, 'reject');
    const of = async () =>
      (await inspector.call(dimensionOperations.workOrderDimensions, { workOrderId: job.id })).body;
    const mates = ((await of()).questions[0]?.mates ?? []).map(({ travelerId, isOpposite }) => ({
      travelerId,
      stays: !isOpposite,
    }));
    const { version } = (await inspector.call(findingOperations.finding, { findingId })).body;
    const input = { findingId, mates, reason: 'Matched across the hub', signature: pin };
    const decided = await inspector.call(setOperations.decideSet, input, { version });
    expect([decided.status, decided.body.rejected]).toEqual([200, [expect.stringMatching(/^F-/)]]);
    expect(
      (await of()).parts.filter(({ disposition }) => disposition === 'reject').map(({ position }) => position),
    ).toEqual(['blade 1', 'blade 3']);
  });

  it('goes over to a revision that comes in between, differences shown line by line', async () => {
    const { revisionId, modelId } = await job.workOrder();
    const { manualId } = await job.reads.manualRevision.findUniqueOrThrow({ where: { id: revisionId } });
    const content = await fourBladeContent(shop);
    const models = [{ ...content, modelId, tboRules: [] }];
    await shop.run(
      issueRevision,
      { manualId, revision: '4', issuedOn: day(-1), models } as never,
      job.people.inspector,
    );
    const next = await job.nextAt('blade 4');
    const sign = { operation: op.signStep, input: await job.entryFor(next) };
    await expectRefused({ shop, visitor: technician }, sign, { status: 409, type: 'revision-superseded' });
    const shown = (await inspector.call(op.revisionDifferences, { workOrderId: job.id })).body;
    expect(shown.differences).toContainEqual(
      expect.objectContaining({ area: 'kit', change: 'added', what: expect.stringContaining('mounting stud nuts') }),
    );
    const { version } = await job.workOrder();
    const rebased = await inspector.call(op.rebaseRevision, { workOrderId: job.id, signature: pin }, { version });
    expect(rebased.status).toBe(200);
    await job.sign(await job.nextAt('blade 4'));
  });

  it('sends the clamps to the plater and back, through the ledger and a receiving inspection', async () => {
    await job.signed('evaluation');
    await job.approved('firm');
    const clamps = [1, 2, 3, 4].map((n) => `clamp ${n}`);
    const steps = await Promise.all(clamps.map((position) => job.nextAt(position)));
    const supplier = await job.reads.supplier.findFirstOrThrow({ where: { approvedUntil: { gte: new Date() } } });
    const sent = await clerk.call(vendorOperations.sendToVendor, {
      ...{ supplierId: supplier.id, purchaseOrder: 'PO-V-77', paperDue: 'certificate with the bake chart' },
      ...{ expectedOn: day(7), stepIds: steps.map(({ id }) => id), pieces: [] },
    });
    expect(sent.status).toBe(200);
    const [order] = (await clerk.call(vendorOperations.listVendorOrders, { state: 'out', limit: 10 })).body.rows;
    expect(order?.lines).toHaveLength(4);
    const lines = (order?.lines ?? []).map(({ id }) => ({ lineId: id, condition: 'good' as const }));
    const back = { orderId: order?.id ?? '', lines, certificate: 'CD-9001', paperCame: true, signature: pin };
    const came = await inspector.call(vendorOperations.takeBack, back, { version: order?.version ?? 0 });
    expect([came.status, came.body]).toEqual([200, came.body]);
    for (const position of clamps) await job.sign(await job.nextAt(position));
    expect(await ledgerFaults(shop.databaseUrl)).toEqual([]);
  });

  it('repairs the narrow blade in a loop that ends when it measures good', async () => {
    await upTo('blade 2', await loopTitle());
    const again = await job.nextAt('blade 2');
    expect(again).toMatchObject({ attempt: 2, phase: 'repair' });
    const second = await fail('blade 2', { 'width at 30 in': '6.508' });
    await decide(second.id, 'repair', blend);
    await upTo('blade 2', await loopTitle());
    const third = await job.nextAt('blade 2');
    expect(third).toMatchObject({ attempt: 3 });
    await job.sign(third);
    expect((await job.nextAt('blade 2')).findingId).toBeNull();
  });
  const loopTitle = async () => {
    const step = await job.reads.travelerStep.findFirstOrThrow({
      where: {
        traveler: { workOrderId: job.id, position: 'blade 2' },
        state: 'open',
        title: { contains: ', again after ' },
      },
    });
    return step.title;
  };

  it('finds the caliper out of tolerance: everything signed with it is under review, and holds the release', async () => {
    const step = await job.reads.signOff.findFirstOrThrow({
      where: { workOrderId: job.id, instrumentId: { not: null }, step: { title: 'Measure blade by station' } },
    });
    const instrumentId = step.instrumentId ?? '';
    const { version } = await job.reads.instrument.findUniqueOrThrow({ where: { id: instrumentId } });
    const points = [{ nominal: '4.0000', asFound: '4.0040', asLeft: '4.0001', allowed: '0.0010' }];
    const calibration = {
      ...{ instrumentId, calibratedOn: day(0), calibrationDueOn: day(365) },
      inService: true,
      certificate: 'K-91',
      points,
    };
    const found = await inspector.call(processOperations.calibrateInstrument, calibration, { version });
    expect(found.status).toBe(200);
    const listed = (
      await inspector.call(reviewOperations.listCalibrationReviews, { instrumentId, show: 'open', limit: 200 })
    ).body.rows;
    // What was signed as good with it: two blades as found, the third at its last try. What failed is with its finding.
    const good = await job.reads.signOff.count({ where: { instrumentId, stepId: { not: null }, result: 'pass' } });
    expect([listed.length, good]).toEqual([3, 3]);
  });

  it('prints every traveler of the day', async () => {
    for (const one of jobs) {
      const answer = await fetch(`${shop.address}/api/work-orders/${one.id}/travelers/pdf`, {
        headers: { cookie: technician.cookie },
      });
      expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
      expect((await answer.arrayBuffer()).byteLength).toBeGreaterThan(20_000);
    }
  });
});
