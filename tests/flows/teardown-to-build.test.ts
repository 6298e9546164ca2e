// size: one story told in order; each step stands on the one before
import { findingOperations } from '@hubwright/contracts/findings/operations';
import { processOperations } from '@hubwright/contracts/processes/operations';
import { travelerOperations as op } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { badValues, goodValues, Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('from teardown to a closed build', () => {
  let shop: ShopApp;
  let job: Job;
  let technician: Visitor;
  let inspector: Visitor;
  let trainee: Visitor;

  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    technician = await as(shop, 'technician');
    inspector = await as(shop, 'inspector');
    trainee = await as(shop, 'piers');
    job = await Job.arrived(shop, 'QT2001');
  });
  afterAll(() => shop.close());

  it('does not begin before the customer approved the evaluation, nor before stored energy is out', async () => {
    const begin = { workOrderId: job.id, energyReleased: true as const };
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.beginTeardown, input: begin },
      { status: 409, type: 'consent-missing' },
    );
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.beginTeardown, input: { workOrderId: job.id, energyReleased: false } },
      { status: 422, type: 'invalid-input', pointer: '/energyReleased' },
    );
    await expectRefused(
      { shop, visitor: trainee },
      { operation: op.beginTeardown, input: begin },
      { status: 403, type: 'not-authorised' },
    );
  });

  it('raises a traveler for the unit and each serialized part, steps and limits from the route of its class', async () => {
    await job.approved('estimate');
    const begun = await technician.call(op.beginTeardown, { workOrderId: job.id, energyReleased: true });
    expect(begun.body.travelers.map(({ position }) => position)).toEqual([
      'assembly',
      'blade 1',
      'blade 2',
      'blade 3',
      'hub',
    ]);
    const blade = begun.body.travelers.find(({ position }) => position === 'blade 1');
    const { body } = await technician.call(op.traveler, { travelerId: blade?.id ?? '' });
    expect(body.workOrder.stage).toBe('teardown');
    const widths = body.steps.find(({ title }) => title === 'Measure blade by station');
    expect(widths?.measures.map(({ name, low }) => [name, low])).toContainEqual(['width at 24 in', '6.180']);
    expect(body.steps[0]).toMatchObject({ blocked: null, state: 'open', signOffs: [] });
    expect(body.steps[1]?.blocked).toMatchObject({ problem: 'step-out-of-order' });
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.beginTeardown, input: { workOrderId: job.id, energyReleased: true } },
      { status: 409, type: 'teardown-begun' },
    );
  });

  it('shows each person what they may sign now', async () => {
    const mine = await technician.call(op.benchBoard, { limit: 200 });
    expect(mine.body.mine.filter(({ workOrderId }) => workOrderId === job.id).map(({ title }) => title)).toContain(
      'Strip paint and clean',
    );
    const inspects = await inspector.call(op.benchBoard, { limit: 200 });
    expect(
      inspects.body.mine
        .filter(({ level }) => level === 'perform' && level.length > 0)
        .every(({ process }) => process !== 'cleaning'),
    ).toBe(true);
    expect(mine.body.byProcess.find(({ process }) => process === 'cleaning')?.ready).toBeGreaterThanOrEqual(4);
  });

  it('refuses steps out of order and without authorisation, and changes nothing', async () => {
    const blade = await job.nextAt('blade 1');
    const later = await job.reads.travelerStep.findFirstOrThrow({
      where: { travelerId: blade.travelerId, sequence: 2 },
    });
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.signStep, input: { stepId: later.id, signature: pin } },
      { status: 409, type: 'step-out-of-order' },
    );
    const assembly = await job.nextAt('assembly');
    const refused = await expectRefused(
      { shop, visitor: trainee },
      { operation: op.signStep, input: { stepId: assembly.id, signature: pin } },
      { status: 403, type: 'not-authorised' },
    );
    expect(refused.holders).toContain('Jory Penhallow');
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.signStep, input: { stepId: blade.id, signature: { pin: '0001' } } },
      { status: 403, type: 'signature-refused' },
    );
    await expectRefused(
      { shop, visitor: await as(shop, 'front-desk') },
      { operation: op.signStep, input: { stepId: blade.id, signature: pin } },
      { status: 403, type: 'not-permitted' },
    );
  });

  it('signs in order; a repeat and a late entry without reason are refused', async () => {
    const blade = await job.nextAt('blade 1');
    const key = 'one-sign-off-1';
    const first = await technician.call(op.signStep, { stepId: blade.id, signature: pin }, { key });
    expect(first.body).toMatchObject({ state: 'signed', stage: 'teardown' });
    const again = await technician.call(op.signStep, { stepId: blade.id, signature: pin }, { key });
    expect(again.body).toEqual(first.body);
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.signStep, input: { stepId: blade.id, signature: pin } },
      { status: 409, type: 'step-done' },
    );
    const next = await job.nextAt('blade 1');
    const later = new Date(Date.now() + 3_600_000).toISOString();
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.signStep, input: { stepId: next.id, performedAt: later, signature: pin } },
      { status: 422, type: 'performed-in-future', pointer: '/performedAt' },
    );
    await expectRefused(
      { shop, visitor: technician },
      {
        operation: op.signStep,
        input: { stepId: next.id, performedAt: '2020-01-01T12:00:00.000Z', lateReason: 'forgot', signature: pin },
      },
      { status: 422, type: 'performed-at-wrong', pointer: '/performedAt' },
    );
    await job.sign(next);
  });

  it('wants every value, from an instrument of the right kind in calibration', async () => {
    for (let step = await job.nextAt('blade 1'); step.kind !== 'measure'; step = await job.nextAt('blade 1'))
      await job.sign(step);
    const step = await job.nextAt('blade 1');
    const { body: gauges } = await technician.call(processOperations.listInstruments, { limit: 100 });
    const gauge = (tag: string) => gauges.rows.find((row) => row.tag === tag)?.id ?? '';
    const entry = { stepId: step.id, values: goodValues(step), signature: pin };
    const refused = (input: Record<string, unknown>, status: number, type: string) =>
      expectRefused(
        { shop, visitor: technician },
        { operation: op.signStep, input: { ...entry, ...input } },
        { status, type },
      );
    await refused({}, 409, 'instrument-missing');
    await refused({ instrumentId: gauge('MIC-01') }, 409, 'instrument-wrong');
    expect(await refused({ instrumentId: gauge('CAL-02') }, 409, 'calibration-expired')).toMatchObject({
      instrument: 'CAL-02',
    });
    await refused({ instrumentId: gauge('CAL-01'), values: goodValues(step).slice(1) }, 422, 'values-missing');
    const outside = await refused({ instrumentId: gauge('CAL-01'), values: badValues(step) }, 409, 'outside-limits');
    expect(outside.outside).toEqual([expect.stringContaining('width at 18 in 5.7645 in')]);
    const [first, ...rest] = goodValues(step);
    const millimetres = [{ measureId: first?.measureId ?? '', value: '162.69' }, ...rest];
    await refused({ instrumentId: gauge('CAL-01'), values: millimetres }, 422, 'reading-impossible');
  });

  it('keeps a value outside its limits as a failed result with a finding, and measures again after the repair', async () => {
    const step = await job.nextAt('blade 1');
    const { instrumentId } = await job.entryFor(step);
    const where = {
      area: 'leading-edge',
      damage: 'out-of-limits' as const,
      place: 'station 18',
      description: 'narrow after an old blend',
    };
    const entry = { stepId: step.id, instrumentId, signature: pin, ...where };
    await expectRefused(
      { shop, visitor: technician },
      { operation: findingOperations.failStep, input: { ...entry, values: goodValues(step) } },
      { status: 409, type: 'inside-limits' },
    );
    const failed = await technician.call(findingOperations.failStep, { ...entry, values: badValues(step) });
    expect(failed.body.number).toMatch(/^F-/);
    await job.signed('evaluation');
    expect((await job.workOrder()).stage).toBe('teardown');
    const dispose = (visitor: Visitor, input: Record<string, unknown>) => ({
      visitor,
      input: { findingId: failed.body.id, signature: pin, ...input },
    });
    const serviceable = dispose(inspector, { disposition: 'serviceable' });
    await expectRefused(
      { shop, visitor: serviceable.visitor },
      { operation: findingOperations.disposeFinding, input: serviceable.input, options: { version: 1 } },
      { status: 409, type: 'still-outside-limits' },
    );
    const decided = await inspector.call(
      findingOperations.disposeFinding,
      {
        findingId: failed.body.id,
        disposition: 'repair',
        steps: [{ title: 'Build up and blend', process: 'blade-repair', standardMinutes: 60 }],
        labourMinor: 24_000,
        signature: pin,
      },
      { version: 1 },
    );
    // The evaluation is complete with this decision, before the firm quote: nothing is over and above it.
    expect(decided.body).toMatchObject({ overAndAbove: false, stage: 'inspected' });
    expect(decided.body.stepIds).toHaveLength(2);
    const { body } = await inspector.call(findingOperations.finding, { findingId: failed.body.id });
    expect(body).toMatchObject({
      disposition: 'repair',
      done: false,
      answer: 'not-asked',
      decidedBy: { displayName: 'Bram Ostler' },
    });
    expect(body.steps.map(({ title }) => title)).toEqual([
      'Build up and blend',
      `Measure blade by station, again after ${failed.body.number}`,
    ]);
  });

  it('does no repair before the firm quote is approved', async () => {
    const step = await job.nextAt('blade 1');
    expect(step.phase).toBe('repair');
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.signStep, input: { stepId: step.id, signature: pin } },
      { status: 409, type: 'consent-missing' },
    );
    await job.approved('firm');
    await job.sign(step);
    const again = await job.nextAt('blade 1');
    expect(again.measures[0]).toMatchObject({ name: 'width at 18 in', low: '6.405' });
  });

  it('does no over-and-above work before the customer approved it', async () => {
    const hub = await job.nextAt('hub');
    const raised = await technician.call(findingOperations.raiseFinding, {
      travelerId: hub.travelerId,
      area: 'outside',
      damage: 'corroded',
      place: 'between sockets 1 and 2',
      description: 'pitting under the old plating',
    });
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.signStep, input: { stepId: hub.id, signature: pin } },
      { status: 409, type: 'finding-undecided' },
    );
    const decided = await inspector.call(
      findingOperations.disposeFinding,
      {
        findingId: raised.body.id,
        disposition: 'repair',
        steps: [
          { title: 'Blend pitting', process: 'blade-repair', standardMinutes: 30 },
          { title: 'Magnetic particle test, outside', process: 'non-destructive-test', standardMinutes: 20 },
        ],
        labourMinor: 9_000,
        signature: pin,
      },
      { version: 1 },
    );
    expect(decided.body.overAndAbove).toBe(true);
    const blend = await job.nextAt('hub');
    expect(blend.title).toBe('Blend pitting');
    await expectRefused(
      { shop, visitor: technician },
      { operation: op.signStep, input: { stepId: blend.id, signature: pin } },
      { status: 409, type: 'over-and-above-unanswered' },
    );
    await job.approved('over-and-above');
    await job.sign(blend);
  });

  it('supersedes a wrong sign-off with a reason; both are shown', async () => {
    const hub = await job.nextAt('hub');
    const { body } = await technician.call(op.traveler, { travelerId: hub.travelerId });
    const measured = body.steps.find(({ title }) => title === 'Measure bores and sockets');
    const wrong = measured?.signOffs[0];
    const values = goodValues(measured ?? { measures: [] }).map((value, index) =>
      index === 0 ? { ...value, value: '4.1250' } : value,
    );
    const corrected = await technician.call(op.correctSignOff, {
      signOffId: wrong?.id ?? '',
      values,
      instrumentId: wrong?.instrument?.id,
      reason: 'digits swapped',
      signature: pin,
    });
    expect(corrected.status).toBe(200);
    const after = await technician.call(op.traveler, { travelerId: hub.travelerId });
    const both = after.body.steps.find(({ id }) => id === measured?.id)?.signOffs ?? [];
    expect(both).toHaveLength(2);
    expect(both[0]).toMatchObject({ id: wrong?.id, supersededById: both[1]?.id });
    expect(both[1]).toMatchObject({ supersedesId: wrong?.id, meaning: 'Corrects an earlier sign-off: digits swapped' });
    expect(both[1]?.values.map(({ value }) => value)).toContain('4.1250');
    await expectRefused(
      { shop, visitor: technician },
      {
        operation: op.correctSignOff,
        input: { signOffId: wrong?.id, values, instrumentId: wrong?.instrument?.id, reason: 'again', signature: pin },
      },
      { status: 409, type: 'already-corrected' },
    );
  });

  it('builds only when every part is ready, and closes by the ledger: leftovers and missing pieces by name', async () => {
    await job.signed('repair');
    const first = await job.nextAt('assembly');
    expect(first.phase).toBe('build');
    await job.takenOff();
    await job.signed('build');
    expect((await job.workOrder()).stage).toBe('build');
    const close = { operation: op.closeBuild, input: { workOrderId: job.id, signature: pin } };
    const empty = await expectRefused({ shop, visitor: technician }, close, { status: 409, type: 'build-not-closed' });
    expect(empty.leftOver).toContainEqual(expect.objectContaining({ part: 'Q301-51', place: 'rack' }));
    expect(empty.missing).toContainEqual(expect.objectContaining({ part: 'Q301-31' }));
    await job.filled();
    const [spare] = await job.reads.kitLine.findMany({ where: { kitId: job.kitId, source: 'new' }, take: 1 });
    expect(spare).toBeDefined();
    const closed = await technician.call(op.closeBuild, { workOrderId: job.id, signature: pin });
    expect(closed.body).toMatchObject({ stage: 'final-inspection' });
  }, 120_000);

  it('leaves the final inspection, which the inspection queue shows by wait', async () => {
    const { body } = await inspector.call(op.inspectionQueue, { limit: 50 });
    expect(body.rows.find(({ workOrderId }) => workOrderId === job.id)).toMatchObject({
      title: 'Final inspection',
      authorised: true,
      ownWork: false,
      workBy: ['Jory Penhallow'],
    });
  });
});
