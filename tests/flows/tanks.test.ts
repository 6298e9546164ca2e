import { equipmentOperations as op } from '@hubwright/contracts/processes/equipment-operations';
import { releaseOperations } from '@hubwright/contracts/releases/operations';
import { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { recordReadings } from '../../apps/server/src/modules/processes/record-readings.command.ts';
import { signStep } from '../../apps/server/src/modules/work-orders/sign-step.command.ts';
import { fourBladeWithCounterweights } from '../support/arrivals.ts';
import { Job } from '../support/job.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { as, pin } from '../support/people.ts';
import { expectRefused } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

/** A cadmium tank runs out of its limits between two counterweights; the magnetic bench fails its check after work. */
describe('tanks and test systems', () => {
  const clock = MovedClock.inTheMorning();
  let shop: ShopApp;
  let technician: Visitor;
  let inspector: Visitor;
  let job: Job;
  let tank: string;
  beforeAll(async () => {
    shop = await ShopApp.open('shop', { clock });
    technician = await as(shop, 'technician');
    inspector = await as(shop, 'inspector');
    job = await Job.arrived(shop, 'K4101', await fourBladeWithCounterweights(shop, 'K4101'));
    await job.inWork();
    tank = (await job.reads.equipment.findUniqueOrThrow({ where: { code: 'CAD-1' } })).id;
  }, 180_000);
  afterAll(() => shop.close());

  const row = async (code: string) => {
    const { rows } = (await technician.call(op.listEquipment, { limit: 50 })).body;
    return rows.find((one) => one.code === code);
  };
  const read = (values: { name: string; value: string }[], more: { takenAt?: string; lateReason?: string } = {}) => ({
    operation: op.recordReadings,
    input: { equipmentId: tank, values, ...more, signature: pin },
  });
  const plating = async (position: string, more: { equipmentId?: string } = {}) => {
    const step = await job.nextAt(position);
    expect(step.title).toBe('Cadmium plate');
    const form = [{ name: 'current density', value: '20' }];
    return { operation: travelerOperations.signStep, input: { stepId: step.id, form, ...more, signature: pin } };
  };
  const refused = (request: Parameters<typeof expectRefused>[1], type: string, status = 409) =>
    expectRefused({ shop, visitor: technician }, request, { status, type });

  it('stand on the bench as what stops a step, until the tank was read today', async () => {
    expect(await row('CAD-1')).toMatchObject({ kind: 'cadmium-tank', process: 'plating', openDoubts: 0 });
    const board = (await technician.call(travelerOperations.benchBoard, { limit: 100, process: 'plating' })).body;
    const stopped = board.blocked.filter(({ title }) => title === 'Cadmium plate');
    expect(stopped.map(({ blocked }) => blocked.problem)).toEqual(['tank-overdue', 'tank-overdue']);
    // The clock may begin a day after the weekly analysis of the reference data was last good.
    expect(stopped[0]?.blocked.detail).toMatch(/CAD-1: the analysis is overdue: (cadmium metal, )?bath temperature/);
    await refused(await plating('counterweight 1'), 'equipment-missing', 422);
    await refused(await plating('counterweight 1', { equipmentId: tank }), 'tank-overdue');
    const bench = (await row('MAG-1'))?.id ?? '';
    await refused(await plating('counterweight 1', { equipmentId: bench }), 'equipment-wrong');
  });

  it('take readings by the names they have, of today or with a reason, and never of tomorrow', async () => {
    await refused(read([{ name: 'copper', value: '3' }]), 'reading-unknown', 422);
    await refused(read([{ name: 'cadmium metal', value: 'yes' }]), 'reading-unknown', 422);
    const tomorrow = new Date(Date.now() + 86_400_000).toISOString();
    await refused(read([{ name: 'cadmium metal', value: '3.00' }], { takenAt: tomorrow }), 'taken-at-wrong', 422);
    const before = new Date(Date.now() - 2 * 86_400_000).toISOString();
    await refused(read([{ name: 'cadmium metal', value: '3.00' }], { takenAt: before }), 'taken-at-wrong', 422);
    await expectRefused({ shop, visitor: await as(shop, 'ludo') }, read([{ name: 'cadmium metal', value: '3.00' }]), {
      status: 403,
      type: 'not-authorised',
    });
  });

  it('let a step be signed with the results the tank was fit by', async () => {
    const both = [
      { name: 'cadmium metal', value: '2.60' },
      { name: 'bath temperature', value: '80' },
    ];
    const { operation, input } = read(both);
    expect((await technician.call(operation, input)).body).toMatchObject({ good: true, out: [], doubts: 0 });
    expect((await row('CAD-1'))?.shut).toBeNull();
    const { input: signed } = await plating('counterweight 1', { equipmentId: tank });
    const answer = await technician.call(travelerOperations.signStep, signed);
    const { content } = await job.reads.signOff.findUniqueOrThrow({ where: { id: answer.body.signOffId } });
    expect(JSON.parse(content).equipment).toMatchObject({
      code: 'CAD-1',
      fitBy: [expect.objectContaining({ name: 'cadmium metal', value: '2.60', unit: 'oz/gal' }), expect.anything()],
    });
  });

  it('read out of limits shut the tank and name the part that went through, for an inspector, before the release', async () => {
    clock.seconds += 3_600;
    const { operation, input } = read([{ name: 'cadmium metal', value: '2.59' }]);
    expect((await technician.call(operation, input)).body).toMatchObject({
      ...{ good: false, out: ['cadmium metal'], doubts: 1 },
    });
    await refused(await plating('counterweight 2', { equipmentId: tank }), 'tank-out-of-limits');
    const [doubt] = (await inspector.call(op.listDoubts, { limit: 10, workOrderId: job.id })).body.rows;
    expect(doubt).toMatchObject({ value: '2.59 oz/gal', step: 'Cadmium plate', decision: null });
    const open = (await inspector.call(releaseOperations.releaseChecklist, { workOrderId: job.id })).body;
    expect(JSON.stringify(open)).toContain('went through CAD-1 before cadmium metal was read 2.59 oz/gal');

    const answer = (decision: 'stands' | 'finding-raised' | 'customer-told') => ({
      operation: op.answerDoubt,
      input: { doubtId: doubt?.id ?? '', decision, reason: 'Thickness measured: 0.0004 in', signature: pin },
      options: { version: doubt?.version ?? 0 },
    });
    const by = { shop, visitor: inspector };
    await expectRefused(by, answer('finding-raised'), { status: 409, type: 'finding-not-raised' });
    await expectRefused(by, answer('customer-told'), { status: 409, type: 'unit-not-released' });
    const { operation: answering, input: stands, options } = answer('stands');
    expect((await inspector.call(answering, stands, options)).status).toBe(200);
    await expectRefused(by, { ...answer('stands'), options: { version: 2 } }, { status: 409, type: 'doubt-answered' });
    expect((await inspector.call(op.listDoubts, { limit: 10, workOrderId: job.id })).body.rows).toEqual([]);
  });

  it('corrected and read again go on, and work of before is judged by what held then', async () => {
    const added = { equipmentId: tank, what: 'cadmium oxide', amount: '2.0', unit: 'lb' };
    expect((await technician.call(op.recordAddition, added)).status).toBe(200);
    clock.seconds += 600;
    const { operation, input } = read([{ name: 'cadmium metal', value: '3.00' }]);
    expect((await technician.call(operation, input)).body.doubts).toBe(0);
    const { input: signed } = await plating('counterweight 2', { equipmentId: tank });
    const whenLow = new Date(clock.now().getTime() - 300_000).toISOString();
    await refused(
      { operation: travelerOperations.signStep, input: { ...signed, performedAt: whenLow } },
      'tank-out-of-limits',
    );
    expect((await technician.call(travelerOperations.signStep, signed)).status).toBe(200);
    const log = (await technician.call(op.equipmentLog, { equipmentId: tank })).body;
    expect(log.readings[0]).toMatchObject({ quantity: 'cadmium metal', value: '3.00', good: true, low: '2.60' });
    expect(log.additions[0]).toMatchObject({ what: 'cadmium oxide', amount: '2.0', unit: 'lb' });
  });

  it('begin no load in a tank that is shut, nor one whose parts ask for different ones', async () => {
    clock.seconds += 30 * 3_600;
    const other = await Job.arrived(shop, 'K4102', await fourBladeWithCounterweights(shop, 'K4102'));
    await other.tornDown();
    const blade = await other.nextAt('blade 1');
    const begin = { process: 'cleaning' as const, stepIds: [blade.id] };
    const strip = (await row('STRIP-1'))?.id ?? '';
    await refused({ operation: loadOperations.startLoad, input: begin }, 'equipment-missing', 422);
    await refused({ operation: loadOperations.startLoad, input: { ...begin, equipmentId: strip } }, 'tank-overdue');
    await other.fit('strip-tank');
    const begun = await technician.call(loadOperations.startLoad, { ...begin, equipmentId: strip });
    expect(begun.status).toBe(200);
    const [load] = (await technician.call(loadOperations.listLoads, { state: 'open', limit: 5 })).body.rows;
    expect(load).toMatchObject({ equipment: 'STRIP-1 Paint strip tank', equipmentId: strip });
  });

  it('of a crack test are checked whole once a day; a failed check names what was tested before it', async () => {
    const other = await Job.arrived(shop, 'K4103', await fourBladeWithCounterweights(shop, 'K4103'));
    await other.tornDown();
    await shop.run(signStep, await other.entryFor(await other.nextAt('clamp 1')), other.people.technician);
    const test = await other.nextAt('clamp 1');
    expect(test.equipmentKind).toBe('magnetic-bench');
    const bench = (await row('MAG-1'))?.id ?? '';
    const sign = {
      operation: travelerOperations.signStep,
      input: { stepId: test.id, equipmentId: bench, signature: pin },
    };
    await refused(sign, 'system-check-missing');
    const check = (shown: 'yes' | 'no', lamp = '1000') => [
      { name: 'UV-A at 15 in', value: lamp },
      { name: 'ring shows every indication asked for', value: shown },
      { name: 'water-break test good', value: 'yes' as const },
      { name: 'concentration', value: '0.20' },
      { name: 'ambient light', value: '1.0' },
    ];
    const half = { equipmentId: bench, values: check('yes').slice(1), signature: pin };
    await refused({ operation: op.recordReadings, input: half }, 'reading-missing', 422);
    await shop.run(recordReadings, { ...half, values: check('yes', '999') }, other.people.technician);
    await refused(sign, 'system-check-failed');
    clock.seconds += 60;
    await shop.run(recordReadings, { ...half, values: check('yes') }, other.people.technician);
    expect((await technician.call(sign.operation, sign.input)).status).toBe(200);
    clock.seconds += 60;
    const failed = await shop.run(recordReadings, { ...half, values: check('no') }, other.people.technician);
    expect(failed).toMatchObject({ good: false, doubts: 1 });
  });
});
