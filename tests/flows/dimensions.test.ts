// size: one shop, a propeller for each rule of its blades

import { findingOperations } from '@hubwright/contracts/findings/operations';
import { setOperations } from '@hubwright/contracts/findings/set-operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { dimensionOperations as op } from '@hubwright/contracts/work-orders/dimension-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { beginTeardown } from '../../apps/server/src/modules/work-orders/begin-teardown.command.ts';
import { closeBuild } from '../../apps/server/src/modules/work-orders/close-build.command.ts';
import { closeWorkOrder } from '../../apps/server/src/modules/work-orders/close-work-order.command.ts';
import { okToShip } from '../../apps/server/src/modules/work-orders/ok-to-ship.command.ts';
import { shipUnit } from '../../apps/server/src/modules/work-orders/ship-unit.command.ts';
import { fourBlade } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { goodValues, Job } from '../support/job.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

describe('the blades of a propeller', () => {
  let shop: ShopApp;
  let inspector: Visitor;
  let technician: Visitor;
  let other: Visitor;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    [inspector, technician] = [await as(shop, 'inspector'), await as(shop, 'technician')];
    other = await as(shop, 'sunniva');
  });
  afterAll(() => shop.close());

  const arrived = async (serial: string) => Job.arrived(shop, serial, await fourBlade(shop, serial));
  const dimensions = async (job: Job) => (await inspector.call(op.workOrderDimensions, { workOrderId: job.id })).body;
  const bladeOf = async (job: Job, position: string) =>
    (await dimensions(job)).parts.find((part) => part.position === position);
  const rowOf = async (job: Job, position: string, name: string) =>
    (await bladeOf(job, position))?.rows.find((row) => row.name === name);
  /** Signs what is next on one traveler until a step of this title is. */
  const upTo = async (job: Job, position: string, title: string) => {
    for (;;) {
      const step = await job.nextAt(position);
      if (step.title === title) return step;
      await job.sign(step);
    }
  };
  const carried = (
    job: Job,
    given: {
      itemId?: string;
      kind: 'diameter' | 'oversize' | 'matched-set';
      place?: string;
      value: string;
      basis: 'as-found' | 'kept' | 'new' | 'measured';
    },
  ) => ({
    operation: op.recordCarried,
    input: { workOrderId: job.id, itemId: job.unitId, ...given },
  });
  const record = async (job: Job, given: Parameters<typeof carried>[1]) => {
    const { operation, input } = carried(job, given);
    const { status, body } = await technician.call(operation, input);
    expect([status, body]).toEqual([200, body]);
    return body;
  };
  const fails = async (job: Job, position: string, wrong: Record<string, string>) => {
    const step = await job.nextAt(position);
    const values = goodValues(step).map((one) => {
      const name = step.measures.find(({ id }) => id === one.measureId)?.name ?? '';
      return { ...one, value: wrong[name] ?? one.value };
    });
    const found = {
      area: 'general',
      damage: 'out-of-limits' as const,
      place: 'measured',
      description: 'outside its limit',
    };
    const entry = await job.entryFor(step, values);
    const { status, body } = await technician.call(findingOperations.failStep, { ...entry, ...found });
    expect(status).toBe(200);
    return body;
  };
  const decided = async (findingId: string, disposition: 'repair' | 'reject' | 'serviceable', steps: object[] = []) => {
    const { version } = (await inspector.call(findingOperations.finding, { findingId })).body;
    const input = { findingId, disposition, steps: steps as never, signature: pin };
    return { operation: findingOperations.disposeFinding, input, options: { version } };
  };
  const decide = async (...given: Parameters<typeof decided>) => {
    const { operation, input, options } = await decided(...given);
    return inspector.call(operation, input, options);
  };

  /** Approved for return to service under the designation of its diameter, and out of the house. */
  const releasedAndShipped = async (job: Job) => {
    await job.signed('final');
    const version = async () => ({ version: (await job.workOrder()).version });
    const approve = { workOrderId: job.id, signature: pin };
    const { status, body } = await other.call(releaseOperations.approveRelease, approve, await version());
    expect([status, body]).toEqual([200, body]);
    const release = (await other.call(releaseOperations.release, { releaseId: body.releaseId })).body;
    expect(release.content.unit.model).toBe('Q4F-84-2');
    expect(release.content.description).toMatch(/Major repair: every blade shortened to a diameter of 82.0/);
    const loose = await job.reads.looseItem.findMany({ where: { workOrderId: job.id } });
    const packed = { workOrderId: job.id, looseItemsPacked: loose.map(({ id }) => id) };
    await shop.run(okToShip, packed, job.people.desk, await version());
    const sent = { workOrderId: job.id, carrier: 'van', reference: '' };
    await shop.run(shipUnit, sent, job.people.desk, await version());
    await shop.run(closeWorkOrder, { workOrderId: job.id }, job.people.desk, await version());
  };

  it('are measured by the limits of their diameter, and not at all until it is on record', async () => {
    const job = await arrived('D4001');
    await job.approved('estimate');
    const begun = { workOrderId: job.id, energyReleased: true as const };
    await shop.run(beginTeardown, begun, job.people.technician);
    const tip = () => rowOf(job, 'blade 1', 'width at 39 in');
    expect(await tip()).toMatchObject({ low: null, basis: 'diameter not on record' });
    const step = await upTo(job, 'blade 1', 'Measure blade by station');
    const sign = { operation: travelerOperations.signStep, input: await job.entryFor(step) };
    await expectRefused({ shop, visitor: technician }, sign, { status: 409, type: 'diameter-unknown' });
    const tooShort = carried(job, { kind: 'diameter', value: '81.0', basis: 'measured' });
    const refused = { status: 409, type: 'diameter-not-allowed' };
    const said = await expectRefused({ shop, visitor: technician }, tooShort, refused);
    expect(said.detail).toMatch(/84.0, 83.0, 82.0/);
    expect((await record(job, { kind: 'diameter', value: '84', basis: 'measured' })).steps).toBe(8);
    expect(await tip()).toMatchObject({ low: '4.305', basis: 'diameter 84.0' });
    const { diameter } = await dimensions(job);
    expect(diameter).toMatchObject({ current: '84.0', designation: 'Q4F-84', leastEligible: '82.0' });
    await job.sign(await job.nextAt('blade 1'));
  });

  it('show before and after repair beside the limit and the next visit beside both, with an estimate of what is left', async () => {
    const first = await arrived('D4002');
    await first.tornDown();
    await first.signed('evaluation');
    await first.approved('firm');
    const after = await upTo(first, 'blade 2', 'Measure after repair');
    const values = goodValues(after).map((one) =>
      after.measures.find(({ id }) => id === one.measureId)?.name === 'width at 24 in after repair'
        ? { ...one, value: '6.945' }
        : one,
    );
    const signed = await technician.call(travelerOperations.signStep, await first.entryFor(after, values));
    expect(signed.status).toBe(200);
    expect(await rowOf(first, 'blade 2', 'width at 24 in')).toMatchObject({
      asFound: { value: '6.940', pass: true },
      afterRepair: { value: '6.945', pass: true },
      removed: '-0.005',
      remaining: { overhauls: 'unknown' },
    });
    expect((await bladeOf(first, 'blade 2'))?.rows.every(({ past }) => past.length === 0)).toBe(true);
  });

  it('beyond the chart of a bend are rejected; inside it they are straightened and tested again', async () => {
    const job = await Job.arrived(shop, 'D4003', {
      ...(await fourBlade(shop, 'D4003')),
      scope: 'strike-inspection',
      events: ['strike'],
    });
    await job.tornDown();
    await upTo(job, 'blade 1', 'Measure bend');
    const bent = { 'bend, distance from the hub': '23.9', 'bend angle': '5.4' };
    const { id } = await fails(job, 'blade 1', bent);
    await expectRefused(
      { shop, visitor: inspector },
      await decided(id, 'repair', [{ title: 'Straighten', process: 'blade-repair', standardMinutes: 30 }]),
      {
        ...{ status: 409, type: 'beyond-chart' },
      },
    );
    expect((await decide(id, 'reject')).status).toBe(200);
    const step = await upTo(job, 'blade 2', 'Measure bend');
    const inside = step.measures.map((measure) => ({ measureId: measure.id, value: measure.chart ? '5.5' : '24.0' }));
    expect((await technician.call(travelerOperations.signStep, await job.entryFor(step, inside))).status).toBe(200);
  });

  it('answer for each other: a rejected one asks of every mate, and what does not stay is rejected with it', async () => {
    const job = await arrived('D4004');
    await job.tornDown();
    await upTo(job, 'blade 1', 'Measure blade by station');
    const { id: findingId, number } = await fails(job, 'blade 1', { 'width at 30 in': '6.401' });
    expect((await decide(findingId, 'reject')).status).toBe(200);
    const [question] = (await dimensions(job)).questions;
    expect(question).toMatchObject({ number, position: 'blade 1' });
    expect(question?.mates.map(({ position, isOpposite }) => [position, isOpposite])).toEqual([
      ['blade 2', false],
      ['blade 3', true],
      ['blade 4', false],
    ]);
    const mates = (question?.mates ?? []).map(({ travelerId, isOpposite }) => ({ travelerId, stays: !isOpposite }));
    const { version } = (await inspector.call(findingOperations.finding, { findingId })).body;
    const asked = (given: typeof mates) => ({
      operation: setOperations.decideSet,
      input: { findingId, mates: given, reason: 'Pairs across the hub are matched', signature: pin },
      options: { version },
    });
    await expectRefused({ shop, visitor: inspector }, asked(mates.slice(1)), {
      status: 422,
      type: 'mates-unanswered',
    });
    await expectRefused({ shop, visitor: technician }, asked(mates), { status: 403, type: 'not-permitted' });
    const done = await inspector.call(setOperations.decideSet, asked(mates).input, { version });
    expect(done.status).toBe(200);
    expect(done.body.rejected).toHaveLength(1);
    expect(await bladeOf(job, 'blade 3')).toMatchObject({ disposition: 'reject' });
    expect(await bladeOf(job, 'blade 2')).toMatchObject({ disposition: null });
    const now = await dimensions(job);
    expect(now.questions).toEqual([]);
    expect(now.decisions).toMatchObject([{ number, position: 'blade 1', reason: 'Pairs across the hub are matched' }]);
    const again = asked(mates);
    again.options.version = version + 1;
    await expectRefused({ shop, visitor: inspector }, again, { status: 409, type: 'set-decided' });
  });

  it('do not run together when they differ by more than the manual allows', async () => {
    const job = await arrived('D4005');
    await job.tornDown();
    const step = await upTo(job, 'blade 4', 'Measure blade by station');
    const wide = goodValues(step).map((one) =>
      step.measures.find(({ id }) => id === one.measureId)?.name === 'width at 30 in'
        ? { ...one, value: '6.650' }
        : one,
    );
    expect((await technician.call(travelerOperations.signStep, await job.entryFor(step, wide))).status).toBe(200);
    await job.sign(await upTo(job, 'blade 2', 'Measure blade by station'));
    const { spreads, open } = await dimensions(job);
    expect(spreads[0]).toMatchObject({
      widest: { spread: '0.14', between: ['blade 2', 'blade 4'] },
      missing: ['blade 1', 'blade 3'],
      verdict: 'fail',
    });
    expect(open).toContain('Width at station 30: blade 2 and blade 4 differ by 0.14, at most 0.120 is allowed');
  });

  it('are shortened alike or not at all: limits, steps, designation and the customer’s yes follow', async () => {
    const job = await arrived('D4006');
    await job.tornDown();
    await job.signed('evaluation');
    await job.approved('firm');
    const shorten = async (diameter: string) => ({
      operation: op.shortenBlades,
      input: { workOrderId: job.id, diameter, reason: 'Tip of blade 2 worn', signature: pin },
      options: { version: (await job.workOrder()).version },
    });
    await expectRefused({ shop, visitor: inspector }, await shorten('84.0'), {
      status: 409,
      type: 'diameter-not-allowed',
    });
    await expectRefused({ shop, visitor: technician }, await shorten('82.0'), { status: 403, type: 'not-permitted' });
    const shown = await inspector.call(op.shorteningDifferences, { workOrderId: job.id, diameter: '82.0' });
    const { operation, input, options } = await shorten('82.0');
    const done = await inspector.call(operation, input, options);
    expect(done.status).toBe(200);
    expect(done.body.designation).toBe('Q4F-84-2');
    expect(done.body.differences).toEqual(shown.body.differences);
    expect(done.body.differences.map(({ what, before, after }) => [what, before, after])).toEqual(
      expect.arrayContaining([
        ['Designation', 'Q4F-84', 'Q4F-84-2'],
        ['Consent of the customer', 'Approved', 'Quote to write'],
        ['Shorten blade to the new diameter', null, expect.any(String)],
        ['length', expect.stringContaining('41.950'), expect.stringContaining('40.950')],
      ]),
    );
    for (const position of ['blade 1', 'blade 2', 'blade 3', 'blade 4']) {
      const steps = await job.reads.travelerStep.findMany({
        where: { traveler: { workOrderId: job.id, position }, state: 'open' },
        orderBy: { sequence: 'asc' },
        include: { measures: true },
      });
      expect(steps.map(({ title }) => title)).toContain('Shorten blade to the new diameter');
      const after = steps.find(({ title }) => title === 'Measure after repair');
      expect(after?.measures.find(({ dimension }) => dimension === 'length')).toMatchObject({
        high: '41.000',
        basis: 'diameter 82.0',
      });
    }
    expect((await job.workOrder()).consent).toBe('quote-due');
  });

  it('keep oversize steps for good, and only forward', async () => {
    const job = await arrived('D4007');
    await job.tornDown();
    const blade = await bladeOf(job, 'blade 1');
    const bush = { itemId: blade?.itemId ?? '', kind: 'oversize', place: 'shank bush bore', basis: 'new' } as const;
    expect(blade?.oversizes).toEqual([{ place: 'shank bush bore', steps: ['+0.010', '+0.020'] }]);
    await expectRefused({ shop, visitor: technician }, carried(job, { ...bush, value: '+0.015' }), {
      status: 409,
      type: 'oversize-unknown',
    });
    expect((await record(job, { ...bush, value: '+0.020' })).steps).toBe(1);
    expect(await rowOf(job, 'blade 1', 'shank bush bore')).toMatchObject({ low: '2.1440', basis: 'oversize +0.020' });
    expect(await rowOf(job, 'blade 2', 'shank bush bore')).toMatchObject({ low: '2.1240', basis: null });
    await expectRefused({ shop, visitor: technician }, carried(job, { ...bush, value: '+0.010' }), {
      status: 409,
      type: 'oversize-unknown',
    });
  });

  it('go back on the race halves they came with, are recorded under their new designation, and come back as they left', async () => {
    const whole = await fourBlade(shop, 'D4008');
    const parts = whole.parts?.filter(({ kind }) => kind !== 'clamp') ?? [];
    const job = await Job.arrived(shop, 'D4008', { ...whole, parts });
    await job.inWork();
    const shortening = { workOrderId: job.id, diameter: '82.0', reason: 'Tips worn', signature: pin };
    const { version } = await job.workOrder();
    expect((await inspector.call(op.shortenBlades, shortening, { version })).status).toBe(200);
    await job.signed('evaluation');
    await job.approved('firm');
    const set = (n: number, value: string, basis: 'as-found' | 'kept' | 'new') => ({
      ...({ kind: 'matched-set', place: `blade ${n} race halves`, value, basis } as const),
    });
    for (const n of [1, 2, 3, 4]) await record(job, set(n, `m-1${n}`, 'as-found'));
    const mixed = { status: 409, type: 'set-mixed' };
    await expectRefused({ shop, visitor: technician }, carried(job, set(2, 'M-11', 'kept')), {
      ...mixed,
    });
    await expectRefused({ shop, visitor: technician }, carried(job, set(2, 'M-99', 'kept')), { ...mixed });
    await expectRefused({ shop, visitor: technician }, carried(job, set(2, 'M-12', 'new')), {
      ...mixed,
    });
    for (const n of [1, 2, 3]) await record(job, set(n, `M-1${n}`, 'kept'));
    expect((await dimensions(job)).open).toEqual(['Nobody has confirmed which set is in: blade 4 race halves']);
    await job.signed('repair');
    await job.takenOff();
    await job.filled();
    await job.signed('build');
    const close = shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    await expect(close).rejects.toMatchObject({ type: 'set-open' });
    await record(job, set(4, 'M-40', 'new'));
    const { stage } = await shop.run(closeBuild, { workOrderId: job.id, signature: pin }, job.people.technician);
    expect(stage).toBe('final-inspection');
    await releasedAndShipped(job);

    const again = await Job.arrived(shop, 'D4008', { ...whole, parts });
    const { diameter, carried: facts } = await dimensions(again);
    expect(diameter).toMatchObject({ current: '82.0', designation: 'Q4F-84-2', shortenTo: null });
    expect(facts).toContainEqual(
      expect.objectContaining({ place: 'blade 4 race halves', value: 'M-40', basis: 'new', isNow: false }),
    );
    await again.approved('estimate');
    const begun = { workOrderId: again.id, energyReleased: true as const };
    await shop.run(beginTeardown, begun, again.people.technician);
    const tip = await rowOf(again, 'blade 2', 'width at 39 in');
    expect(tip).toMatchObject({ low: '4.420', basis: 'diameter 82.0', asFound: null });
    expect(tip?.past).toEqual([{ on: day(0), workOrderNumber: job.number, value: '4.420' }]);
  }, 120_000);

  it('with corrosion have its class decided by area, and point at the same area of their mates', async () => {
    const job = await arrived('D4009');
    const [first] = (await job.tornDown()).filter(({ position }) => position === 'blade 2');
    const corroded = (more: object) => ({
      operation: findingOperations.raiseFinding,
      input: {
        ...{
          travelerId: first?.id ?? '',
          area: 'retention',
          damage: 'corroded',
          place: 'race seat',
          description: 'pitting',
        },
        ...more,
      } as never,
    });
    await expectRefused({ shop, visitor: technician }, corroded({}), { status: 422, type: 'corrosion-class-missing' });
    const hub = { spot: { on: 'hub', face: 'front', degrees: 10, ring: 'inner' }, corrosionClass: 'moderate' };
    await expectRefused({ shop, visitor: technician }, corroded(hub), {
      status: 422,
      type: 'invalid-input',
    });
    const spot = { on: 'blade', surface: 'face', station: '4.5', chord: 'middle' };
    const { body } = await technician.call(
      findingOperations.raiseFinding,
      corroded({ spot, corrosionClass: 'moderate' }).input,
    );
    const shown = (await inspector.call(findingOperations.finding, { findingId: body.id })).body;
    expect(shown).toMatchObject({ spot, corrosionClass: 'moderate' });
    const test = { title: 'Penetrant test', process: 'non-destructive-test', standardMinutes: 10 };
    await expectRefused({ shop, visitor: inspector }, await decided(body.id, 'repair', [test]), {
      status: 409,
      type: 'corrosion-too-heavy',
    });
    const { alike } = await dimensions(job);
    expect(alike).toEqual([{ area: 'Retention', found: ['blade 2'], lookAt: ['blade 1', 'blade 3', 'blade 4'] }]);
  });

  it('have their process forms filled in with the signature, every entry or none', async () => {
    const job = await arrived('D4010');
    await job.tornDown();
    const step = await job.nextAt('blade 1');
    const entry = await job.entryFor(step);
    const sign = (form: { name: string; value: string }[]) => ({
      operation: travelerOperations.signStep,
      input: { ...entry, form },
    });
    await expectRefused({ shop, visitor: technician }, sign([]), {
      status: 422,
      type: 'form-missing',
    });
    const wrong = entry.form.map((one) => (one.name === 'bath temperature' ? { ...one, value: 'warm' } : one));
    await expectRefused({ shop, visitor: technician }, sign(wrong), {
      status: 422,
      type: 'form-missing',
    });
    expect((await technician.call(travelerOperations.signStep, sign(entry.form).input)).status).toBe(200);
    const traveler = (await technician.call(travelerOperations.traveler, { travelerId: step.travelerId })).body;
    expect(traveler.steps[0]?.signOffs[0]?.form).toEqual(entry.form);
  });
});
